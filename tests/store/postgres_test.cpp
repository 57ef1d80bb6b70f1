// What only a PostgreSQL database goes through: many clubs, several servers, a server that is cut off.
#include <gtest/gtest.h>
#include <libpq-fe.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <atomic>
#include <cstdlib>
#include <random>
#include <set>
#include <thread>

#include "app/store/postgres/connection.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/store/backend.h"
#include "tests/store/long_run.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using ledger::Role;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::Backend;
using test::said;

const std::string kNow = "2026-11-26T18:05:00+01:00";
const Sender kCoach{"phone-1", "ann", Role::kCoach, false};

ledger::Entry hurt(int n, const std::string& player = "Q07") {
  return ledger::test::read(entry_text(n, "hurt", "\"player\":\"" + player + "\",\"place\":\"knee\"", n)).value();
}

TEST(Postgres, ClubsDoNotSeeEachOther) {
  const Backend backend("PostgreSQL");
  auto ours = backend.open("ours");
  auto theirs = backend.open("theirs");
  ASSERT_TRUE(ours->take_in(kCoach, {hurt(1), hurt(2)}, shipped_kinds(), kNow));
  EXPECT_TRUE(theirs->entries_after(0, 10, shipped_kinds()).value().empty());
  EXPECT_FALSE(theirs->erase_person("Q07", kNow, test::kNoNote).value());
  EXPECT_EQ(theirs->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow).value().front().receipt, 1);
  EXPECT_EQ(ours->audit().value().entries, 2);
}

TEST(Postgres, EntriesAreNeitherChangedNorDeleted) {
  const Backend backend("PostgreSQL");
  auto store = backend.open();
  ASSERT_TRUE(store->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow));
  for (const char* statement : {"UPDATE entry SET author = 'bo'", "DELETE FROM entry", "TRUNCATE entry CASCADE"}) {
    EXPECT_NE(said(backend.where(), statement).find("entries are never changed or deleted"), std::string::npos)
        << statement;
  }
  EXPECT_EQ(said(backend.where(), "SELECT count(*) FROM entry"), "1|");
}

TEST(Postgres, WhatIsAboutAPersonDoesNotLieThereInTheClear) {
  const Backend backend("PostgreSQL");
  auto store = backend.open();
  ASSERT_TRUE(store->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow));
  const std::string all =
      said(backend.where(), "SELECT string_agg(encode(body, 'escape') || encode(person, 'escape'), '') FROM entry");
  EXPECT_GT(all.size(), 100U);
  EXPECT_EQ(all.find("knee"), std::string::npos);
  EXPECT_EQ(all.find("Q07"), std::string::npos);
}

TEST(Postgres, TextsWithQuotesAndBackslashesComeBackAsTheyWent) {
  const Backend backend("PostgreSQL");
  auto store = backend.open();
  const std::string author = R"(O'Neil"\{a,b}); DROP TABLE entry;--)";
  ASSERT_TRUE(store->take_in({"phone \\1", author, Role::kCoach, false}, {hurt(1)}, shipped_kinds(), kNow));
  const auto there = store->entries_after(0, 10, shipped_kinds()).value();
  ASSERT_EQ(there.size(), 1U);
  EXPECT_EQ(there[0].author, author);
  EXPECT_EQ(there[0].device, "phone \\1");
}

// Several servers take in for one club at once: every number is given once, and the chain holds.
TEST(Postgres, ACopyThatIsRefusedLeavesNothingAndTheConnectionGoesOn) {
  const Backend backend("PostgreSQL");
  auto store = backend.open();
  auto connection = std::move(postgres::Connection::open(backend.where()).value());
  constexpr const char* kCopy = "COPY evening (club, day, squad, receipt) FROM STDIN (FORMAT binary)";
  postgres::CopiedRows rows(4);
  for (const std::int64_t receipt : {1, 2, 1}) {
    rows.row().text("quillmere").text("2026-11-26").text("u13").integer(receipt);
  }
  {
    postgres::Transaction transaction(connection);
    ASSERT_FALSE(transaction.begin());
    const auto fault = connection.copy(kCopy, rows);
    ASSERT_TRUE(fault);
    EXPECT_NE(fault->found.find("violates"), std::string::npos) << fault->found;
  }
  EXPECT_EQ(said(backend.where(), "SELECT count(*) FROM evening"), "0|");
  EXPECT_TRUE(connection.copy("COPY nothing FROM STDIN (FORMAT binary)", rows)) << "no such table";
  EXPECT_EQ(connection.ask("SELECT 1::bigint").value().integer(0, 0), 1);
}

TEST(Postgres, SeveralServersGiveEveryNumberOnce) {
  const Backend backend("PostgreSQL");
  static_cast<void>(backend.open());
  constexpr int kServers = 4;
  constexpr int kEach = 40;
  std::atomic<int> refused = 0;
  std::vector<std::thread> servers;
  for (int server = 0; server < kServers; ++server) {
    servers.emplace_back([&, server] {
      auto store = backend.open();
      for (int n = 0; n < kEach; ++n) {
        // Half of them are sent by two servers.
        const int entry = n % 2 == 0 ? 1 + n : 1000 * (server + 1) + n;
        if (!store->take_in(kCoach, {hurt(entry)}, shipped_kinds(), kNow)) ++refused;
      }
    });
  }
  for (std::thread& server : servers) server.join();
  EXPECT_EQ(refused, 0);
  auto store = backend.open();
  const Audit audit = store->audit().value();
  EXPECT_EQ(audit.entries, kEach / 2 + kServers * kEach / 2);
  EXPECT_FALSE(audit.broken_at);
}

// Cut off as by a power cut while entries come in: what was acknowledged is there once, what was not is sent again.
TEST(Postgres, AServerThatIsCutOffLosesNothingThatWasAcknowledged) {
  const Backend backend("PostgreSQL");
  auto store = backend.open();
  std::atomic<bool> over = false;
  std::thread cutting([&] {
    for (int i = 0; i < 3; ++i) {
      std::this_thread::sleep_for(std::chrono::milliseconds(150));
      test::PrivateCluster::instance().cut_and_restart();
    }
    over = true;
  });
  int acknowledged = 0;
  int faults = 0;
  bool unsure = true;  // whose answer was cut off may be there: it is sent again before anything is counted
  while (!over || unsure) {
    unsure = !store->take_in(kCoach, {hurt(acknowledged + 1)}, shipped_kinds(), kNow);
    if (!unsure) {
      ++acknowledged;
    } else {
      ++faults;
      std::this_thread::sleep_for(std::chrono::milliseconds(20));
    }
  }
  cutting.join();
  EXPECT_GT(faults, 0) << "nothing was cut";
  const Audit audit = backend.open()->audit().value();
  EXPECT_EQ(audit.entries, acknowledged);
  EXPECT_FALSE(audit.broken_at);
}

// The call that was cut off is a fault, and nothing of it is there; the next one connects again.
TEST(Postgres, AGateThatWasCutOffWhileItLayIdleGoesOnAsIfNothingHadBeen) {
  const Backend backend("PostgreSQL");
  const auto gate = backend.open_gate();
  Account ann;
  ann.sign_in = "ann";
  ASSERT_TRUE(gate->add_account(ann).value());
  test::PrivateCluster::instance().cut_and_restart();
  EXPECT_TRUE(gate->account(ann.id).value()->grants.empty());
  test::PrivateCluster::instance().cut_and_restart();
  EXPECT_TRUE(gate->set_grants(ann.id, {{"u13", "2026-08-01", "", false}}).value());
  test::PrivateCluster::instance().cut_and_restart();
  EXPECT_EQ(gate->account(ann.id).value()->grants.size(), 1U);
}

// What a child process was told is stored, in the order in which it was told.
class Child {
 public:
  Child(const Backend& backend, int first) {
    if (::pipe(pipe_.data()) != 0) throw std::runtime_error("no pipe");
    process_ = ::fork();
    if (process_ == 0) {
      ::close(pipe_[0]);
      auto store = backend.open();
      for (int n = first; n < first + 3000;) {
        // What gets no answer is sent again, as a phone does.
        if (!store->take_in(kCoach, {hurt(n)}, shipped_kinds(), kNow)) {
          std::this_thread::sleep_for(std::chrono::milliseconds(10));
          continue;
        }
        if (::write(pipe_[1], &n, sizeof n) != sizeof n) ::_exit(4);
        ++n;
      }
      ::_exit(0);
    }
    ::close(pipe_[1]);
  }
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;
  ~Child() {
    ::kill(process_, SIGKILL);
    ::waitpid(process_, nullptr, 0);
    ::close(pipe_[0]);
  }
  // Kills it, and gives the last that it said; 'last' where it said nothing more.
  int killed(int last) {
    ::kill(process_, SIGKILL);
    int told = 0;
    while (::read(pipe_[0], &told, sizeof told) == sizeof told) last = told;
    return last;
  }
  // Waits for one more.
  int next() {
    int told = 0;
    return ::read(pipe_[0], &told, sizeof told) == sizeof told ? told : 0;
  }

 private:
  std::array<int, 2> pipe_{};
  pid_t process_ = 0;
};

// Every entry that was acknowledged is there, once, and at most one more; gives how many there are.
int check_after(const Backend& backend, int last) {
  auto store = backend.open();
  const Audit audit = store->audit().value();
  EXPECT_FALSE(audit.broken_at || audit.damaged_at);
  EXPECT_TRUE(audit.entries == last || audit.entries == last + 1) << audit.entries << " after " << last;
  const auto entries = store->entries_after(0, 100'000, shipped_kinds()).value();
  std::set<std::string> there;
  for (const ledger::Received& one : entries) there.insert(to_text(one.entry.id));
  EXPECT_EQ(there.size(), static_cast<std::size_t>(audit.entries)) << "one is there twice";
  for (int n = 1; n <= last; ++n) EXPECT_EQ(there.count(to_text(ledger::test::id_of(n))), 1U) << n;
  return static_cast<int>(audit.entries);
}

int rounds_of_kills() { return test::is_long_run() ? 200 : 10; }

TEST(Postgres, AKilledProcessLosesNothingThatWasAcknowledged) {
  const Backend backend("PostgreSQL");
  static_cast<void>(backend.open());
  std::mt19937 random(2026);
  int there = 0;
  for (int round = 0; round < rounds_of_kills(); ++round) {
    Child child(backend, there + 1);
    std::this_thread::sleep_for(std::chrono::milliseconds(20 + random() % 80));
    there = check_after(backend, child.killed(there));
    ASSERT_FALSE(HasFailure()) << "round " << round;
  }
  EXPECT_GT(there, 0) << "no child came to write";
}

constexpr const char* kItsProcess =
    "SELECT pid FROM pg_stat_activity WHERE datname = current_database() AND backend_type = 'client backend' "
    "AND pid <> pg_backend_pid()";

// The server's process for this connection is killed while it works: the server throws out all connections and recovers
// from its log. The child goes on by itself, without being started again.
TEST(Postgres, AKilledServerProcessLosesNothingThatWasAcknowledged) {
  const Backend backend("PostgreSQL");
  static_cast<void>(backend.open());
  std::mt19937 random(1126);
  Child child(backend, 1);
  int last = child.next();
  int killed = 0;
  for (int round = 0; round < rounds_of_kills(); ++round) {
    std::this_thread::sleep_for(std::chrono::milliseconds(random() % 40));
    // After the kill before, the server may still be recovering.
    int number = 0;
    for (int tries = 0; tries < 1000 && number < 2; ++tries) {
      number = std::atoi(said(backend.where(), kItsProcess).c_str());
      if (number < 2) std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    if (number > 1 && ::kill(number, SIGKILL) == 0) ++killed;
    // It comes back, and more is taken in. What was told before the kill may still be in the pipe.
    const int before = last;
    while (last < before + 3) {
      const int next = child.next();
      ASSERT_EQ(next, last + 1) << "round " << round;
      last = next;
    }
  }
  last = child.killed(last);
  for (int tries = 0; tries < 1000 && said(backend.where(), "SELECT 1") != "1|"; ++tries) {
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
  }
  EXPECT_GE(killed, rounds_of_kills() * 9 / 10);
  check_after(backend, last);
}

TEST(Postgres, ADatabaseOfANewerVersionIsLeftAsItIs) {
  const Backend backend("PostgreSQL");
  static_cast<void>(backend.open());
  said(backend.where(), "INSERT INTO form VALUES (99)");
  const auto store = open_postgres_store(backend.where(), "ours", read_key_file(backend.file().key_file()).value());
  ASSERT_FALSE(store);
  EXPECT_EQ(store.faults().front().found, "version 99");
}

TEST(Postgres, SettingsThatPromiseLessAreAFault) {
  const Backend backend("PostgreSQL");
  // fsync cannot be set for one database alone; the encoding and what a role states of itself can be looked at alike.
  const auto open = postgres::Connection::open(backend.where() + " options='-c standard_conforming_strings=off'");
  ASSERT_FALSE(open);
  EXPECT_EQ(open.faults().front().place.field, "standard_conforming_strings");
  EXPECT_FALSE(postgres::Connection::open("host=127.0.0.1 port=1 dbname=nowhere connect_timeout=2"));
}

}  // namespace
}  // namespace lanework::store
