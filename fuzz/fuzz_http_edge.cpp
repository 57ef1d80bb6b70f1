// Any bytes as a connection to the server: cut into requests by the reader that the listener uses, each answered by the
// whole house over a SQLite store of its own. The first byte says how the bytes arrive. 'lead' and 'coach' are cookies
// of people who are signed in, 'phone' is the secret of the coach's device.
#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "app/serve/http/request_reader.h"
#include "app/serve/sign_in/secret.h"
#include "app/store/sqlite/connection.h"
#include "fuzz/promise.h"
#include "tests/serve/house_of_test.h"

namespace {

using namespace lanework;
using fuzz::promise;
using serve::Request;
using serve::RequestReader;
using serve::Response;
using store::sqlite::Connection;
using store::sqlite::Statement;

constexpr std::size_t kMostWrites = 400;  // then another house, so that what lies there stays small

struct Connected {
  std::vector<Request> requests;
  int refusal = 0;
  // Where the sender goes on, one may have been refused that the other still waits for.
  [[nodiscard]] bool is_like(const Connected& other, bool ends) const {
    const auto same = [](const Request& a, const Request& b) {
      return a.method == b.method && a.path == b.path && a.query == b.query && a.headers == b.headers &&
             a.body == b.body;
    };
    const bool refused = refusal != 0 && other.refusal != 0;
    return (!ends || refused || refusal == other.refusal) && requests.size() == other.requests.size() &&
           std::equal(requests.begin(), requests.end(), other.requests.begin(), same);
  }
};

bool is_plain(std::string_view text) {
  return std::none_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20 && byte != '\t') || byte == 0x7F;
  });
}

void check_request(const Request& request) {
  promise(!request.method.empty() && is_plain(request.method), "a method is a word");
  promise(is_plain(request.path) && is_plain(request.query), "a target is one line");
  promise(request.path.find_first_of(" ?") == std::string::npos, "a path ends before the query");
  promise(request.body.size() <= serve::SizeLimits{}.body_bytes, "a body is no longer than may be");
  std::size_t size = 0;
  for (const auto& [name, value] : request.headers) {
    size += name.size() + value.size();
    promise(!name.empty() && is_plain(name) && is_plain(value), "a header is one line");
    promise(std::none_of(name.begin(), name.end(), [](char c) { return c >= 'A' && c <= 'Z'; }),
            "names are in lower case");
  }
  promise(size <= serve::SizeLimits{}.header_bytes, "headers are no longer than may be");
}

// piece: so many bytes at a time; 0: as many as there is room for.
Connected read_all(std::string_view bytes, std::size_t piece, bool ends) {
  RequestReader reader({});
  Connected out;
  while (true) {
    switch (reader.step()) {
      case RequestReader::Step::kMore: {
        if (bytes.empty() && !ends) return out;
        if (bytes.empty()) {
          reader.ended();
          continue;
        }
        const auto room = reader.room();
        promise(!room.empty(), "where more is wanted there is room");
        const std::size_t count = std::min({piece == 0 ? room.size() : piece, room.size(), bytes.size()});
        std::copy_n(bytes.begin(), count, room.begin());
        reader.came(count);
        bytes.remove_prefix(count);
        continue;
      }
      case RequestReader::Step::kGoOn:
        promise(reader.in_body(), "who waits to go on has said all of the headers");
        continue;
      case RequestReader::Step::kWhole:
        promise(reader.version() == 10 || reader.version() == 11, "a version is 1.0 or 1.1");
        out.requests.push_back(reader.take());
        check_request(out.requests.back());
        continue;
      case RequestReader::Step::kRefused:
        out.refusal = reader.refusal();
        promise(out.refusal == 400 || out.refusal == 413 || out.refusal == 431, "a refusal has a status of its own");
        promise(reader.step() == RequestReader::Step::kRefused, "after a refusal nothing more is read");
        return out;
      case RequestReader::Step::kEnd:
        return out;
    }
  }
}

class Fuzzed {
 public:
  Fuzzed()
      : book_(Connection::open_as_it_is(house_.file()).value()), version_(book_.database(), "PRAGMA data_version") {
    house_.house().pace = std::make_unique<serve::Pace>(serve::PaceRule{100'000'000, 100'000'000});
    lead_ = house_.account(ledger::Role::kLead);
    coach_ = house_.account(ledger::Role::kCoach, {{"u13", "2026-08-01", "", false}});
    add_session("lead", lead_);
    add_session("coach", coach_);
    auto& gate = *house_.room().gate;
    const auto opened =
        gate.open_pairing({{}, coach_, store::digest_of("link"), {}, {}, {}, house_.now, house_.now + 600}).value();
    static_cast<void>(
        gate.claim_pairing(store::digest_of("link"), store::digest_of("phone"), "a phone", "123456", house_.now)
            .value());
    promise(gate.confirm_pairing(opened.id, "123456", house_.now).value().has_value(), "the phone is paired");
    // A check of a password takes as long as a hundred other inputs: from this machine none is come to.
    for (int i = 0; i < 40; ++i) static_cast<void>(gate.note_failure("address/127.0.0.1", house_.now).value());
    version_now_ = version();
    held_ = held();
  }

  void ask(const Request& request) {
    const Response answer = house_.service().answer(request);
    check_answer(answer, request);
    const std::int64_t after = version();
    if (after != version_now_) check_written(request);
    version_now_ = after;
    if (request.path == "/api/sync" && request.method == "POST") check_sync(request, answer);
    promise(house_.log().back().find(request.path.size() > 12 ? request.path : "\n") == std::string::npos,
            "no line of the log shows a path as it was sent");
    fuzz::promise_one_line(house_.log().back(), "a line of the log is one line");
  }

  void check_refusal(int status) {
    const Response answer = house_.service().refuse(status);
    promise(answer.status == status, "a refusal has its status");
    check_headers(answer);
    promise(bool(parse_json("answer", answer.body)), "a refusal is JSON");
  }

  // Somebody who signed out, or was ended, is of no use to the inputs to come.
  [[nodiscard]] bool is_worn() {
    if (writes_ > kMostWrites) return true;
    if (writes_ == writes_seen_) return false;
    writes_seen_ = writes_;
    auto& gate = *house_.room().gate;
    const auto device = gate.device_by_secret(store::digest_of("phone")).value();
    return !gate.session(store::digest_of("lead")).value() || !gate.session(store::digest_of("coach")).value() ||
           !device || device->revoked != 0 || gate.account(lead_).value()->role != ledger::Role::kLead ||
           gate.account(coach_).value()->grants.empty();
  }

 private:
  serve::test::HouseOfTest house_;
  Connection book_;
  Statement version_;
  std::string lead_;
  std::string coach_;
  std::int64_t version_now_ = 0;
  std::string held_;
  std::size_t writes_ = 0;
  std::size_t writes_seen_ = 0;

  void add_session(const std::string& secret, const std::string& account) {
    promise(house_.room()
                .gate->add_session({store::digest_of(secret), account, house_.now, house_.now, house_.now, true})
                .value(),
            "a session is added");
  }

  std::int64_t version() {
    promise(version_.step() == Statement::Step::kRow, "the version of the data is there");
    const std::int64_t out = version_.integer(0);
    version_.reset();
    return out;
  }

  std::string taken_in() {
    return row_of(
        "SELECT (SELECT count(*) FROM entry), (SELECT count(*) FROM quarantine), (SELECT count(*) FROM person)");
  }

  // All that somebody who shows nothing may not change: everything but failures that are counted.
  std::string held() {
    return row_of(
        "SELECT (SELECT count(*) FROM entry), (SELECT count(*) FROM quarantine), (SELECT count(*) FROM person), "
        "(SELECT group_concat(id || role || password || ended) FROM account), (SELECT count(*) FROM squad_grant), "
        "(SELECT group_concat(account || seen || stepped_up) FROM web_session), "
        "(SELECT group_concat(id || state) FROM pairing), (SELECT group_concat(id || revoked || seen) FROM device), "
        "(SELECT count(*) FROM read_note), (SELECT group_concat(version || name) FROM lists), (SELECT count(*) FROM "
        "player)");
  }

  std::string row_of(const char* question) {
    Statement all(book_.database(), question);
    promise(all.step() == Statement::Step::kRow, "what is held can be read");
    std::string out;
    for (int column = 0; column < all.columns(); ++column) out += all.text(column) + "|";
    return out;
  }

  static bool shows_a_secret(const Request& request) {
    for (const auto& [name, value] : request.headers) {
      if (name == "cookie" &&
          (value.find("lanework=lead") != std::string::npos || value.find("lanework=coach") != std::string::npos))
        return true;
      if (name == "authorization" && value == "Bearer phone") return true;
    }
    return false;
  }

  void check_written(const Request& request) {
    ++writes_;
    const std::string now = held();
    promise(now == held_ || shows_a_secret(request), "nobody changes anything who has not shown who they are");
    promise(now == held_ || request.path.rfind("/api/", 0) == 0, "nothing but the API changes anything");
    held_ = now;
  }

  static void check_headers(const Response& answer) {
    for (const char* name :
         {"Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy", "Cross-Origin-Opener-Policy",
          "Cross-Origin-Embedder-Policy", "Cross-Origin-Resource-Policy", "Permissions-Policy", "Cache-Control"}) {
      promise(std::count_if(answer.headers.begin(), answer.headers.end(),
                            [&](const auto& one) { return one.first == name; }) == 1,
              "every answer has each header that protects who reads it, once");
    }
    for (const auto& [name, value] : answer.headers) {
      fuzz::promise_one_line(name, "a header's name is one line");
      fuzz::promise_one_line(value, "a header is one line");
    }
  }

  // What was sent comes back inside JSON's texts or not at all: files and figures are the server's own.
  static void check_answer(const Response& answer, const Request& request) {
    constexpr std::array<int, 15> kKnown = {200, 201, 202, 304, 400, 401, 403, 404, 405, 409, 410, 415, 422, 426, 429};
    promise(std::find(kKnown.begin(), kKnown.end(), answer.status) != kKnown.end(),
            "an answer has a status that is known");
    check_headers(answer);
    if (answer.file || answer.status == 304) {
      promise(answer.body.empty() && request.method != "POST", "a file is an answer for itself");
      return;
    }
    const std::string_view type = answer.header("Content-Type");
    if (request.path == "/metrics" && answer.status == 200) {
      promise(type == "text/plain; version=0.0.4; charset=utf-8", "figures are plain text");
      promise(request.on_this_machine, "figures are for this machine");
      return;
    }
    if (type == "application/zip" || type == "application/pdf") {
      promise(answer.status == 200 && answer.body.rfind(type == "application/zip" ? "PK" : "%PDF-", 0) == 0,
              "papers and archives are what they say, and no refusals");
      return;
    }
    promise(type == "application/json; charset=utf-8", "what else is no file is JSON");
    const auto body = parse_json("answer", answer.body);
    promise(bool(body), "an answer is JSON as it says");
    promise(answer.status < 400 || body.value().root.find("error") != nullptr, "a refusal says its key");
  }

  // Every entry has one verdict, and sent again none of them changes anything.
  void check_sync(const Request& request, const Response& answer) {
    if (answer.status != 200) return;
    const auto sent = parse_json("request", request.body);
    promise(bool(sent), "what was answered could be read");
    const Node* entries = sent.value().root.find("entries");
    const std::size_t count = entries == nullptr ? 0 : entries->items.size();
    const std::vector<Node> first = verdicts_in(answer);
    promise(first.size() == count, "every entry has one verdict");
    const std::string before = taken_in();
    const std::vector<Node> second = verdicts_in(house_.service().answer(request));
    promise(second.size() == count, "every entry that is sent again has one verdict");
    for (std::size_t i = 0; i < count; ++i) {
      const std::string was = first[i].find("verdict")->text;
      promise(second[i].find("verdict")->text == (was == "stored" ? "known" : was), "an entry is taken in once");
      const Node* receipt = first[i].find("receipt");
      promise(receipt == nullptr || second[i].find("receipt")->integer == receipt->integer,
              "an entry keeps its receipt");
    }
    promise(taken_in() == before, "what is sent again changes nothing");
    version_now_ = version();
    held_ = held();
  }

  static std::vector<Node> verdicts_in(const Response& answer) {
    const auto body = parse_json("answer", answer.body);
    const Node* verdicts = body ? body.value().root.find("verdicts") : nullptr;
    return verdicts == nullptr ? std::vector<Node>() : verdicts->items;
  }
};

std::unique_ptr<Fuzzed>& house() {
  static std::unique_ptr<Fuzzed> house;
  if (!house || house->is_worn()) house = std::make_unique<Fuzzed>();
  return house;
}

}  // namespace

extern "C" int LLVMFuzzerInitialize(int*, char***) {
  // The store's file lies in memory where that can be: what is tested here is not the disk.
  if (std::filesystem::exists("/dev/shm")) ::setenv("TMPDIR", "/dev/shm", 0);
  return 0;
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  constexpr unsigned kPiece = 0x3F;
  constexpr unsigned kFromElsewhere = 0x40;
  constexpr unsigned kEnds = 0x80;
  const std::string bytes(data + 1, data + size);
  const bool ends = (data[0] & kEnds) != 0;
  Connected read = read_all(bytes, data[0] & kPiece, ends);
  promise(read.is_like(read_all(bytes, 0, ends), ends), "what is read does not depend on how the bytes arrive");
  for (Request& request : read.requests) {
    request.on_this_machine = (data[0] & kFromElsewhere) == 0;
    request.address = request.on_this_machine ? "127.0.0.1" : "203.0.113.9";
    house()->ask(request);
  }
  if (read.refusal != 0) house()->check_refusal(read.refusal);
  return 0;
}
