// What only a SQLite file can go through: settings, another process, a killed one, a full disk, bytes that change.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <fstream>
#include <sstream>
#include <thread>

#include "app/store/sqlite/connection.h"
#include "app/store/sqlite/migrate.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/store/long_run.h"
#include "tests/store/raw_statements.h"
#include "tests/store/sqlite_file.h"

namespace lanework::store {
namespace {

using ledger::Role;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::Raw;
using test::SqliteFile;

const std::string kNow = "2026-11-26T18:05:00+01:00";
const Sender kCoach{"phone-1", "ann", Role::kCoach, false};

ledger::Entry hurt(int n, const std::string& player = "Q07") {
  return ledger::test::read(entry_text(n, "hurt", "\"player\":\"" + player + "\",\"place\":\"knee\"", n)).value();
}

std::string bytes_of_file(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

TEST(Sqlite, WhatIsAboutAPersonDoesNotLieThereInTheClear) {
  const SqliteFile file;
  {
    auto store = file.open();
    ASSERT_TRUE(store->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow));
    ASSERT_TRUE(store->take_in({"phone-1", "ann", Role::kBoard, false}, {hurt(2)}, shipped_kinds(), kNow));
    for (const char* part : {"", "-wal"}) {
      const std::string bytes = bytes_of_file(file.file() + part);
      EXPECT_EQ(bytes.find("knee"), std::string::npos) << part;
      EXPECT_EQ(bytes.find("Q07"), std::string::npos) << part;
    }
  }
  EXPECT_NE(bytes_of_file(file.file()).find("phone-1"), std::string::npos) << "nothing was looked at";
}

TEST(Sqlite, EntriesAreNeitherChangedNorDeleted) {
  const SqliteFile file;
  auto store = file.open();
  ASSERT_TRUE(store->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow));
  Raw raw(file.file());
  EXPECT_EQ(raw.run("UPDATE entry SET author = 'bo'"), "entries are never changed");
  EXPECT_EQ(raw.run("DELETE FROM entry"), "entries are never deleted");
}

TEST(Sqlite, WhoeverChangesARowBreaksTheChain) {
  const SqliteFile file;
  auto store = file.open();
  for (int n = 1; n <= 5; ++n) ASSERT_TRUE(store->take_in(kCoach, {hurt(n)}, shipped_kinds(), kNow));
  EXPECT_FALSE(store->audit().value().broken_at);
  Raw raw(file.file());
  raw.run("DROP TRIGGER entry_is_not_changed");
  EXPECT_EQ(raw.run("UPDATE entry SET author = 'bo' WHERE receipt = 3"), "");
  EXPECT_EQ(store->audit().value().broken_at, 3);
}

TEST(Sqlite, AnotherProcessThatHoldsItIsWaitedForThenTold) {
  const SqliteFile file;
  auto store = file.open();
  Raw raw(file.file());
  raw.run("BEGIN IMMEDIATE");
  std::thread soon([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(200));
    raw.run("COMMIT");
  });
  EXPECT_TRUE(store->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow));
  soon.join();
}

TEST(Sqlite, AFileOfANewerVersionIsLeftAsItIs) {
  const SqliteFile file;
  static_cast<void>(file.open());
  Raw(file.file()).run("PRAGMA user_version=99");
  const auto store = open_sqlite_store(file.file(), read_key_file(file.key_file()).value());
  ASSERT_FALSE(store);
  EXPECT_EQ(store.faults().front().found, "version 99");
}

TEST(Sqlite, WhatIsNoDatabaseIsAFault) {
  const SqliteFile file;
  std::ofstream(file.file()) << std::string(4096, 'x');
  const auto store = open_sqlite_store(file.file(), read_key_file(file.key_file()).value());
  ASSERT_FALSE(store);
  EXPECT_EQ(store.faults().front().code, FaultCode::kFileUnreadable);
  EXPECT_FALSE(open_sqlite_store(file.file() + "/nowhere", read_key_file(file.key_file()).value()));
}

// A disk that is full, as SQLite itself stands in for one.
TEST(Sqlite, AFullDiskTakesNothingInAndLosesNothing) {
  const SqliteFile file;
  auto store = file.open();
  ASSERT_TRUE(store->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow));
  auto full = sqlite::Connection::open(file.file());
  ASSERT_TRUE(full);
  ASSERT_FALSE(full.value().run("PRAGMA max_page_count=1"));  // becomes what there is
  sqlite::Transaction transaction(full.value());
  ASSERT_FALSE(transaction.begin());
  std::optional<Fault> fault;
  for (int i = 0; i < 1000 && !fault; ++i) {
    fault = full.value().run(
        "INSERT INTO quarantine (received, device, author, why, body) VALUES "
        "('now', 'a', 'b', 'c', zeroblob(3000))");
  }
  ASSERT_TRUE(fault);
  EXPECT_EQ(fault->code, FaultCode::kCannotWrite);
  EXPECT_NE(fault->found.find("full"), std::string::npos) << fault->found;
}

// The child says which entry it was told is stored; it is killed at some moment; all that it said are there, once.
TEST(Sqlite, AKilledProcessLosesNothingThatWasAcknowledged) {
  const int rounds = test::is_long_run() ? 200 : 10;
  unsigned random = 12345;
  const SqliteFile file;
  static_cast<void>(file.open());
  int next = 1;
  for (int round = 0; round < rounds; ++round) {
    std::array<int, 2> pipe{};
    ASSERT_EQ(::pipe(pipe.data()), 0);
    const pid_t child = ::fork();
    if (child == 0) {
      ::close(pipe[0]);
      auto store = file.open();
      for (int n = next; n < next + 3000; ++n) {
        if (!store->take_in(kCoach, {hurt(n)}, shipped_kinds(), kNow)) ::_exit(3);
        if (::write(pipe[1], &n, sizeof n) != sizeof n) ::_exit(4);
      }
      ::_exit(0);
    }
    ::close(pipe[1]);
    random = random * 1664525U + 1013904223U;
    std::this_thread::sleep_for(std::chrono::milliseconds(20 + (random >> 16) % 80));
    ::kill(child, SIGKILL);
    int last = next - 1;
    int told = 0;
    while (::read(pipe[0], &told, sizeof told) == sizeof told) last = told;
    ::close(pipe[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << WEXITSTATUS(status);
    auto store = file.open();
    const Audit audit = store->audit().value();
    ASSERT_FALSE(audit.broken_at);
    ASSERT_TRUE(audit.entries == last || audit.entries == last + 1) << audit.entries << " after " << last;
    next = static_cast<int>(audit.entries) + 1;
    if (next > 50'000) break;  // ids of a test run out
  }
  EXPECT_GT(next, 1) << "no child came to write";
}

}  // namespace
}  // namespace lanework::store
