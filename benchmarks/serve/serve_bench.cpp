// The server under load, each figure beside its peer in the same run: acknowledged entries a second beside a bare loop
// of one writer on the same settings; the same into PostgreSQL beside COPY; reads with idle connections held beside
// none; memory of idle connections; a week of a big club as its seasons grow.
#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <thread>

#include "app/serve/now.h"
#include "app/store/postgres/postgres_store.h"
#include "benchmarks/serve/clients.h"
#include "benchmarks/serve/copy_peer.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/serve/house_of_test.h"
#include "tests/store/private_cluster.h"

namespace lanework::bench {
namespace {

using serve::test::HouseOfTest;
using Clock = std::chrono::steady_clock;

constexpr int kClients = 64;
constexpr int kEntries = 10;  // an evening's
constexpr double kSeconds = 5;
constexpr std::int64_t kMany = 100'000'000'000;  // so that all numbers are of one length

double since(Clock::time_point began) { return std::chrono::duration<double>(Clock::now() - began).count(); }

std::string id_text(std::int64_t n) {
  std::array<std::uint8_t, 10> random{};
  for (std::size_t i = 0; i < 8; ++i) random[i + 2] = static_cast<std::uint8_t>(n >> (56 - 8 * i));
  return ledger::to_text(ledger::make_entry_id(1'795'700'000'000ULL + static_cast<std::uint64_t>(n / 1000), random));
}

std::string entry_text(std::int64_t n, const std::string& squad, const std::string& day) {
  return R"({"id":")" + id_text(n) + R"(","sequence":)" + std::to_string(n + 1) +
         R"(,"device_time":"2026-11-26T18:04:10+01:00","kind":"wrap-up","squad":")" + squad + R"(","day":")" + day +
         R"(","start":"18:00","happened":"held","did_it":"most","minutes":19})";
}

store::Batch batch_of(std::int64_t first, int count, const std::string& squad = "u13",
                      const std::string& day = "2026-11-26") {
  store::Batch out{{"d-1", "a-1", ledger::Role::kLead, false}, {}, {}, "2026-11-26T18:05:00+01:00"};
  for (int i = 0; i < count; ++i) {
    out.entries.push_back({ledger::test::read(entry_text(first + i, squad, day)).value(), ""});
  }
  return out;
}

// The first entry of a client's nth batch.
std::int64_t first_of(int client, std::int64_t n) {
  return kMany + (static_cast<std::int64_t>(client) * 1'000'000 + n) * kEntries;
}

double busy_seconds_of_all() {
  rusage used{};
  ::getrusage(RUSAGE_SELF, &used);
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) * 1e-6;
  };
  return seconds(used.ru_utime) + seconds(used.ru_stime);
}

// One writer, nothing else, of the same entries by as many devices in turn: 'together' batches in each transaction.
// from: the batch that each device begins with, of none that were there before.
struct Bare {
  double a_second = 0;
  double busy = 0;  // CPU microseconds an entry
};
Bare bare(store::Store& store, int together, std::int64_t from) {
  constexpr int kBatches = 20'000;
  std::vector<std::vector<store::Batch>> ready;
  int n = 0;
  while (n < kBatches) {
    std::vector<store::Batch> some;
    for (int b = 0; b < together; ++b, ++n) {
      some.push_back(batch_of(first_of(n % kClients, from + n / kClients), kEntries));
      some.back().sender.device = "d-0123456789abcd" + std::to_string(10 + n % kClients);
    }
    ready.push_back(std::move(some));
  }
  const double busy_before = busy_seconds_of_all();
  const auto began = Clock::now();
  std::int64_t done = 0;
  for (std::size_t i = 0; i < ready.size() && since(began) < kSeconds; ++i) {
    if (!store.take_in(ready[i], ledger::test::shipped_kinds())) throw std::runtime_error("not taken in");
    done += static_cast<std::int64_t>(together) * kEntries;
  }
  const double took = since(began);
  return {static_cast<double>(done) / took, (busy_seconds_of_all() - busy_before) * 1e6 / static_cast<double>(done)};
}

class Serving {
 public:
  // threads: that answer; each waits for the disk with its request.
  explicit Serving(HouseOfTest& house, int threads = 32) {
    house.house().pace = std::make_unique<serve::Pace>(serve::PaceRule{100'000'000, 100'000'000});
    serve::Where where;
    where.port = 0;
    where.threads = threads;
    serve::Limits limits;
    limits.idle = std::chrono::seconds(600);
    auto opened = serve::Listener::open(
        where, limits, [&house](const serve::Request& request) { return house.service().answer(request); },
        [&house](int status) { return house.service().refuse(status); }, house.house().edge);
    if (!opened) throw std::runtime_error(to_line(opened.faults().front()));
    listener_ = std::move(opened).value();
    thread_ = std::thread([this] { listener_->run(); });
  }
  ~Serving() {
    listener_->stop();
    thread_.join();
  }
  [[nodiscard]] std::uint16_t port() const { return listener_->port(); }

 private:
  std::unique_ptr<serve::Listener> listener_;
  std::thread thread_;
};

double at(const std::vector<double>& sorted, double share) {
  return sorted.empty() ? 0
                        : sorted[std::min(sorted.size() - 1,
                                          static_cast<std::size_t>(share * static_cast<double>(sorted.size())))];
}

long resident_kilobytes() {
  std::ifstream in("/proc/self/status");
  for (std::string line; std::getline(in, line);) {
    if (line.rfind("VmRSS:", 0) == 0) return std::strtol(line.c_str() + 6, nullptr, 10);
  }
  return 0;
}

// One client's request, made once; only the entries' ids and numbers are written anew, since it is the server that is
// measured.
class SyncRequest {
 public:
  explicit SyncRequest(const std::string& credential) {
    std::string body = R"({"client":1,"most":0,"entries":[)";
    for (int i = 0; i < kEntries; ++i) body += (i == 0 ? "" : ",") + entry_text(kMany + i, "u13", "2026-11-26");
    text_ = post("/api/sync", credential, body + "]}");
    for (std::size_t at = text_.find(kId); at != std::string::npos; at = text_.find(kId, at + 1))
      ids_.push_back(at + 6);
  }

  // first: the number of the first entry, of kEntries that have none yet.
  const std::string& numbered(std::int64_t first) {
    for (std::size_t i = 0; i < ids_.size(); ++i) {
      const std::int64_t n = first + static_cast<std::int64_t>(i);
      const std::string id = id_text(n);
      std::copy(id.begin(), id.end(), text_.begin() + static_cast<std::ptrdiff_t>(ids_[i]));
      const std::string sequence = std::to_string(n + 1);
      const std::size_t at = ids_[i] + id.size() + kBetween.size();
      std::copy(sequence.begin(), sequence.end(), text_.begin() + static_cast<std::ptrdiff_t>(at));
    }
    return text_;
  }

 private:
  static constexpr std::string_view kId = R"("id":")";
  static constexpr std::string_view kBetween = R"(","sequence":)";
  std::string text_;
  std::vector<std::size_t> ids_;
};

void sync_beside_a_bare_writer() {
  HouseOfTest house;
  house.now = serve::seconds_of_stamp("2026-11-26T18:05:00+01:00");
  const std::string lead = house.account(ledger::Role::kLead);
  std::vector<std::string> devices;
  for (int c = 0; c < kClients; ++c) devices.push_back("Authorization: Bearer " + house.device(lead) + "\r\n");
  std::vector<SyncRequest> requests;
  for (const std::string& device : devices) requests.emplace_back(device);
  const Serving serving(house, kClients);
  const double busy_before = busy_seconds_of_all();
  const Asked ours = ask_at_once(serving.port(), kClients, kSeconds, [&](int client, int n) -> const std::string& {
    return requests[static_cast<std::size_t>(client)].numbered(first_of(client, n));
  });
  const double busy = busy_seconds_of_all() - busy_before;
  const double a_second = static_cast<double>(ours.seconds.size()) * kEntries / ours.took;
  const double together =
      static_cast<double>(ours.seconds.size()) / static_cast<double>(house.house().writer->transactions());
  const Bare full = bare(*house.room().store, kClients, 100'000);
  const Bare alike = bare(*house.room().store, std::max(1, static_cast<int>(std::lround(together))), 200'000);
  const Bare alone = bare(*house.room().store, 1, 300'000);
  const auto entries = static_cast<double>(ours.seconds.size()) * kEntries;
  std::printf(
      "sync, SQLite: %.0f entries a second acknowledged at %d clients, %d in a batch, %.1f batches in a transaction "
      "(p50 %.1f ms, p99 %.1f ms, refused %lld)\n",
      a_second, kClients, kEntries, together, at(ours.seconds, 0.5) * 1e3, at(ours.seconds, 0.99) * 1e3,
      static_cast<long long>(ours.refused));
  std::printf(
      "  bare writer, the same settings: %.0f with as many batches in a transaction, ratio %.2f, aim 0.70; %.0f with "
      "%d, ratio %.2f; %.0f with one, ratio %.2f\n",
      alike.a_second, a_second / alike.a_second, full.a_second, kClients, a_second / full.a_second, alone.a_second,
      a_second / alone.a_second);
  std::printf(
      "  it had %.2f of %u cores: %.1f us an entry, the clients' part %.1f; the bare writer's own %.1f and %.1f\n",
      busy / ours.took, std::thread::hardware_concurrency(), busy * 1e6 / entries, ours.busy * 1e6 / entries,
      alike.busy, full.busy);
}

void reads_with_idle_connections() {
  HouseOfTest house;
  const std::string lead = house.account(ledger::Role::kLead);
  for (int squad = 0; squad < 100; ++squad) {
    store::Batch batch = batch_of(squad * 4, 4, "u" + std::to_string(squad), "2026-11-24");
    if (!house.room().store->take_in(std::vector<store::Batch>{batch}, ledger::test::shipped_kinds())) std::abort();
  }
  const std::string cookie = "Cookie: lanework=" + house.session(lead) + "\r\n";
  const Serving serving(house);
  const std::string request = get("/api/week/2026-11-23", cookie);
  const auto measure = [&] {
    return ask_at_once(serving.port(), 4, kSeconds, [&](int, int) -> const std::string& { return request; });
  };
  measure();
  const Asked without = measure();
  std::vector<Client> idle;
  idle.reserve(2000);
  for (int i = 0; i < 500; ++i) idle.emplace_back(serving.port());
  const Asked with = measure();
  std::printf(
      "reads, a week of 100 squads at 4 clients: p50 %.2f ms, p99 %.2f ms; with 500 idle connections p50 %.2f, p99 "
      "%.2f, ratio of p99 %.2f; aim 2\n",
      at(without.seconds, 0.5) * 1e3, at(without.seconds, 0.99) * 1e3, at(with.seconds, 0.5) * 1e3,
      at(with.seconds, 0.99) * 1e3, at(with.seconds, 0.99) / at(without.seconds, 0.99));
  const long before = resident_kilobytes();
  while (idle.size() < 2000) idle.emplace_back(serving.port());
  while (house.house().edge.connections_now < 2000) std::this_thread::sleep_for(std::chrono::milliseconds(10));
  std::printf("memory: 1500 more idle connections take %ld kB, so 2000 about %ld kB; the whole process has %ld kB\n",
              resident_kilobytes() - before, (resident_kilobytes() - before) * 2000 / 1500, resident_kilobytes());
}

void week_as_the_seasons_grow() {
  HouseOfTest house;
  const std::string lead = house.account(ledger::Role::kLead);
  const std::string cookie = house.session(lead);
  std::int64_t n = 0;
  const Date first = *parse_iso_date("2026-11-23");
  for (int season = 1; season <= 5; ++season) {
    for (int week = 0; week < 40; ++week) {
      std::vector<store::Batch> batches;
      for (int squad = 0; squad < 100; ++squad) {
        for (const int day : {1, 3}) {
          const std::string when = to_iso(Date{first.days_since_epoch - ((season - 1) * 365 + week * 7) / 7 * 7 + day});
          batches.push_back(batch_of(n, 4, "u" + std::to_string(squad), when));
          n += 4;
        }
      }
      if (!house.room().store->take_in(batches, ledger::test::shipped_kinds())) std::abort();
    }
    std::vector<double> times;
    for (int i = 0; i < 40; ++i) {
      const auto began = Clock::now();
      if (house.ask("GET", "/api/week/2026-11-23", "", cookie).status != 200) std::abort();
      times.push_back(since(began));
    }
    std::sort(times.begin(), times.end());
    std::printf("week, 100 squads and %d season%s (%lld entries): median %.1f ms, most %.1f ms; aim 50\n", season,
                season == 1 ? "" : "s", static_cast<long long>(n), at(times, 0.5) * 1e3, times.back() * 1e3);
  }
}

void postgres_beside_copy() {
  const std::string where = store::test::PrivateCluster::instance().new_database();
  const std::filesystem::path key =
      std::filesystem::temp_directory_path() / ("lanework-bench-key-" + std::to_string(::getpid()));
  auto opened = store::open_postgres_store(where, "quillmere", std::move(store::make_key_file(key.string()).value()));
  if (!opened) throw std::runtime_error(to_line(opened.faults().front()));
  constexpr int kRows = 50'000;
  std::vector<std::vector<store::Batch>> ready;
  for (std::int64_t n = 0; n < kRows; n += 5000) ready.push_back({batch_of(n, 5000)});
  const auto began = Clock::now();
  for (const auto& some : ready) {
    if (!opened.value()->take_in(some, ledger::test::shipped_kinds())) throw std::runtime_error("not taken in");
  }
  const double ours = kRows / since(began);
  const double peer = copied_a_second(where, kRows, ledger::bytes_of(ready[0][0].entries[0].entry));
  std::filesystem::remove(key);
  std::printf(
      "bulk, PostgreSQL: %.0f entries a second taken in (verdicts, chain and index of days), COPY of the same rows "
      "%.0f, ratio %.2f; aim 0.50\n",
      ours, peer, ours / peer);
}

}  // namespace
}  // namespace lanework::bench

// Names of parts; without any, all.
int main(int argc, char** argv) {
  rlimit files{};
  ::getrlimit(RLIMIT_NOFILE, &files);
  files.rlim_cur = files.rlim_max;
  ::setrlimit(RLIMIT_NOFILE, &files);
  const auto asked = [&](const std::string& name) {
    return argc < 2 || std::find(argv + 1, argv + argc, name) != argv + argc;
  };
  if (asked("sync")) lanework::bench::sync_beside_a_bare_writer();
  if (asked("reads")) lanework::bench::reads_with_idle_connections();
  if (asked("week")) lanework::bench::week_as_the_seasons_grow();
  if (asked("bulk")) lanework::bench::postgres_beside_copy();
  return 0;
}
