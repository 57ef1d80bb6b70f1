// From a database of the version before to this one: what was entered is as it was. And many that start at once.
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <latch>
#include <map>
#include <thread>

#include "app/store/postgres/migrate.h"
#include "app/store/postgres/migrations.h"
#include "app/store/sqlite/migrate.h"
#include "app/store/sqlite/migrations.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/store/gate_people.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using ledger::Role;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::add;
using test::Backend;
using test::must;
using test::Raw;
using test::said;

const std::string kNow = "2026-11-26T18:05:00+01:00";

ledger::Entry entry(int n, const std::string& kind, const std::string& fields) {
  return ledger::test::read(entry_text(n, kind, fields, n)).value();
}

// Entries about people and about nobody, one set aside, one person erased.
void fill(Store& store) {
  std::vector<ledger::Entry> entries;
  for (int n = 1; n <= 20; ++n) {
    entries.push_back(n % 4 == 0
                          ? entry(n, "session-started", ledger::test::about_session())
                          : entry(n, "hurt", "\"player\":\"Q0" + std::to_string(n % 3) + "\",\"place\":\"knee\""));
  }
  must(store.take_in({"phone-1", "ann", Role::kCoach, false}, entries, shipped_kinds(), kNow));
  must(store.take_in({"phone-2", "bo", Role::kCoach, true},
                     {entries.front(), entry(21, "hurt", R"("player":"Q01","place":"hip")")}, shipped_kinds(), kNow));
  ASSERT_TRUE(must(store.erase_person("Q02", kNow, test::kNoNote)));
}

// What is handed out of it, in one text.
std::string told(Store& store) {
  std::string out;
  for (const auto& one : must(store.entries_after(0, 1000, shipped_kinds()))) {
    out += std::to_string(one.receipt) + one.received + one.device + one.author + bytes_of(one.entry) + "\n";
  }
  for (const auto& one : must(store.quarantined())) out += std::to_string(one.number) + one.why + one.bytes + "\n";
  const Audit audit = must(store.audit());
  return out + std::to_string(audit.entries) + " " + std::to_string(audit.unreadable) + " " +
         std::to_string(audit.broken_at.value_or(0));
}

std::string newest_twice() {
  const std::string newest = std::to_string(postgres::kMigrationCount) + "|";
  return newest + newest;
}

void expect_the_same(const Backend& from, const Backend& to) {
  const auto gate = to.open_gate();  // the gate first: it takes the steps for the ledger too
  add(*gate, "ann");
  const auto before = from.open();
  const auto after = to.open();
  const std::string was = told(*before);
  EXPECT_NE(was.find("20 5 0"), std::string::npos) << was;
  EXPECT_EQ(told(*after), was);
  EXPECT_EQ(must(after->take_in({"phone-1", "ann", Role::kCoach, false},
                                {entry(30, "session-started", ledger::test::about_session())}, shipped_kinds(), kNow))
                .front()
                .receipt,
            21);
  EXPECT_FALSE(must(after->audit()).broken_at);
  // What was there before is found by its day too.
  const Date day = *parse_iso_date("2026-11-26");
  EXPECT_EQ(must(after->entries_of_days(day, day, shipped_kinds())).size(),
            must(before->entries_of_days(day, day, shipped_kinds())).size() + 1);
  EXPECT_EQ(must(to.open_gate()->accounts()).size(), 1U);
}

// A key's file is its backend's: rows that were sealed under one are read with it elsewhere too.
void give_key(const Backend& from, const Backend& to) {
  std::filesystem::remove(to.file().key_file());
  std::filesystem::copy_file(from.file().key_file(), to.file().key_file());
}

// What is kept aside as the first form had it: under the store's key, whomever it is about. By number, in hexadecimal.
std::map<std::string, std::string> sealed_as_before(const Backend& backend) {
  const Key key = must(read_key_file(backend.file().key_file()));
  std::map<std::string, std::string> out;
  for (const Quarantined& one : must(backend.open()->quarantined())) {
    const std::string context = "quarantine " + chained({one.received, one.device, one.author, one.why});
    out[std::to_string(one.number)] = hexadecimal(sealed(key, one.bytes, context));
  }
  return out;
}

TEST(Migrations, FromTheFirstToTheNewestOnSqliteLeaveEntriesAsTheyWere) {
  const Backend from("SQLite");
  const Backend to("SQLite");
  give_key(from, to);
  fill(*from.open());
  {
    Raw one(to.file().file("quillmere"));
    EXPECT_EQ(one.run(sqlite::kMigrations[0]), "");
    EXPECT_EQ(one.run("PRAGMA user_version=1; ATTACH '" + from.file().file("quillmere") + "' AS source"), "");
    for (const std::string table : {"person", "entry", "quarantine"}) {
      // As the first form had them.
      const std::string columns = table == "quarantine" ? "number, received, device, author, why, body"
                                  : table == "person"   ? "tag, sealed_key, made, erased"
                                                        : "receipt, id, device, sequence, author, role, received, "
                                                          "person, body, link";
      EXPECT_EQ(one.run("INSERT INTO main." + table + " SELECT " + columns + " FROM source." + table), "");
    }
    for (const auto& [number, body] : sealed_as_before(from)) {
      EXPECT_EQ(one.run("UPDATE quarantine SET body = x'" + body + "' WHERE number = " + number), "");
    }
    EXPECT_EQ(one.values("SELECT count(*) FROM sqlite_master WHERE name = 'account'"), "0|");
  }
  expect_the_same(from, to);
  EXPECT_EQ(said(to, "PRAGMA user_version"), std::to_string(sqlite::newest_version()) + "|");
}

TEST(Migrations, FromTheFirstToTheNewestOnPostgresLeaveEntriesAsTheyWere) {
  const Backend from("PostgreSQL");
  const Backend to("PostgreSQL");
  give_key(from, to);
  fill(*from.open());
  {
    auto connection = must(postgres::Connection::open(to.where()));
    ASSERT_FALSE(postgres::migrate_to(connection, 1));
  }
  EXPECT_EQ(said(to, "SELECT version FROM form"), "1|");
  for (const std::string table : {"club", "person", "entry", "quarantine"}) {
    const std::string identity = table == "quarantine" ? " OVERRIDING SYSTEM VALUE" : "";
    // The quarantine had no digests then, and no entry went.
    const std::string source =
        table == "quarantine" ? "(SELECT club, number, received, device, author, why, body FROM quarantine)"
        : table == "entry" ? "(SELECT club, receipt, id, device, sequence, author, role, received, person, body, link "
                             "FROM entry)"
                           : table;
    std::string rows = said(from, "SELECT string_agg(format('INSERT INTO " + table + identity +
                                      " SELECT (%L::" + table + ").*', t::text), ';') FROM " + source + " t");
    ASSERT_GT(rows.size(), 20U) << table;
    rows.pop_back();
    EXPECT_EQ(said(to, rows), "");
  }
  for (const auto& [number, body] : sealed_as_before(from)) {
    EXPECT_EQ(said(to, "UPDATE quarantine SET body = decode('" + body + "', 'hex') WHERE number = " + number), "");
  }
  EXPECT_EQ(said(to, "SELECT to_regclass('account') IS NULL"), "t|");
  expect_the_same(from, to);
  EXPECT_EQ(said(to, "SELECT max(version), count(*) FROM form"), newest_twice());
}

// Servers of a club that start at once, one of the ledger and one of the gate, and neither has ever run before.
TEST(Migrations, ManyProcessesThatStartAtOnceAllOpenAndStepOnce) {
  constexpr int kProcesses = 8;
  for (int round = 0; round < 5; ++round) {
    const Backend backend("SQLite");
    std::array<int, 2> gun{};
    ASSERT_EQ(::pipe(gun.data()), 0);
    std::vector<pid_t> children;
    for (int i = 0; i < kProcesses; ++i) {
      const pid_t child = ::fork();
      if (child == 0) {
        ::close(gun[1]);
        char byte = 0;
        if (::read(gun[0], &byte, 1) != 0) ::_exit(9);  // returns when the last end that writes is closed
        try {
          if (i % 2 == 0) add(*backend.open_gate(), "ann " + std::to_string(i));
          if (i % 2 == 1) {
            must(backend.open()->take_in({"phone-1", "ann", Role::kCoach, false},
                                         {entry(i, "session-started", ledger::test::about_session())}, shipped_kinds(),
                                         kNow));
          }
        } catch (const std::exception& error) {
          std::fprintf(stderr, "%s\n", error.what());
          ::_exit(1);
        }
        ::_exit(0);
      }
      children.push_back(child);
    }
    ::close(gun[0]);
    ::close(gun[1]);
    for (const pid_t child : children) {
      int status = 0;
      ::waitpid(child, &status, 0);
      EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << "round " << round;
    }
    EXPECT_EQ(must(backend.open_gate()->accounts()).size(), 4U);
    EXPECT_EQ(must(backend.open()->audit()).entries, 4);
    EXPECT_EQ(said(backend, "PRAGMA user_version"), std::to_string(sqlite::newest_version()) + "|");
  }
}

TEST(Migrations, ManyServersThatStartAtOnceAllOpenAndStepOnce) {
  const Backend backend("PostgreSQL");
  constexpr int kServers = 8;
  std::latch ready(kServers);
  std::array<std::string, kServers> faults;
  std::vector<std::thread> servers;
  for (int i = 0; i < kServers; ++i) {
    servers.emplace_back([&, i] {
      ready.arrive_and_wait();
      try {
        if (i % 2 == 0) add(*backend.open_gate(), "ann " + std::to_string(i));
        if (i % 2 == 1) static_cast<void>(backend.open());
      } catch (const std::exception& error) {
        faults.at(static_cast<std::size_t>(i)) = error.what();
      }
    });
  }
  for (std::thread& server : servers) server.join();
  for (const std::string& fault : faults) EXPECT_EQ(fault, "");
  EXPECT_EQ(said(backend, "SELECT count(*), max(version) FROM form"), newest_twice());
  EXPECT_EQ(must(backend.open_gate()->accounts()).size(), 4U);
}

TEST(Migrations, ANewerVersionsFileIsLeftAsItIsByTheGateToo) {
  const Backend backend("SQLite");
  static_cast<void>(backend.open_gate());
  said(backend, "PRAGMA user_version=99");
  const auto gate = open_sqlite_gate(backend.file().file("quillmere"), Key::made());
  ASSERT_FALSE(gate);
  EXPECT_EQ(gate.faults().front().found, "version 99");
}

}  // namespace
}  // namespace lanework::store
