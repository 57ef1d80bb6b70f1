// What is past its time goes from the rows themselves, the chain still verifies, and nobody empties a row unnoticed.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <fstream>
#include <set>
#include <sstream>
#include <thread>

#include "app/store/archive/backup.h"
#include "app/store/books.h"
#include "app/store/past.h"
#include "app/store/postgres/postgres_archive.h"
#include "app/store/sqlite/sqlite_archive.h"
#include "core/ledger/canonical.h"
#include "core/ledger/gaps.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/store/gate_people.h"
#include "tests/store/long_run.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using ledger::Role;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::Backend;
using test::must;
using test::said;

const std::string kThen = "2024-09-05T18:05:00+02:00";
const std::string kNow = "2026-11-26T18:05:00+01:00";
const Sender kLead{"desk-1", "lee", Role::kLead, false};

Date day(const char* text) { return *parse_iso_date(text); }

ledger::Entry entry(int n, const std::string& kind, const std::string& fields) {
  return ledger::test::read(entry_text(n, kind, fields, n)).value();
}
ledger::Entry started(int n, const std::string& on) {
  return entry(n, "session-started", R"("squad":"u13","start":"18:00","day":")" + on + "\"");
}
ledger::Entry hurt(int n, const std::string& player) {
  return entry(n, "hurt", "\"player\":\"" + player + "\",\"place\":\"knee\"");
}

std::string bytes_of_file(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

class PastOf : public testing::TestWithParam<const char*> {
 protected:
  Backend backend{GetParam()};
  std::unique_ptr<Store> store = backend.open();

  [[nodiscard]] std::unique_ptr<Past> past(const std::string& club = "quillmere") const {
    Key key = must(read_key_file(backend.file().key_file()));
    return backend.where().empty() ? must(open_sqlite_past(backend.file().file(club), std::move(key)))
                                   : must(open_postgres_past(backend.where(), club, std::move(key)));
  }
  void take(const std::vector<ledger::Entry>& entries, const std::string& received = kThen) {
    must(store->take_in(kLead, entries, shipped_kinds(), received));
  }
  std::vector<std::int64_t> receipts(std::int64_t after = 0, std::size_t most = 100'000) {
    std::vector<std::int64_t> out;
    for (const auto& one : must(store->entries_after(after, most, shipped_kinds()))) out.push_back(one.receipt);
    return out;
  }
  std::string on_rows(const std::string& statement) { return said(backend, statement); }
  void without_triggers() {
    on_rows(backend.where().empty()
                ? "DROP TRIGGER entry_is_not_changed; DROP TRIGGER compaction_is_not_changed; "
                  "DROP TRIGGER compaction_is_not_deleted"
                : "ALTER TABLE entry DISABLE TRIGGER USER; ALTER TABLE compaction DISABLE TRIGGER USER");
  }
  // Two evenings of long ago, one of now, two entries about Q07, one about Q08; the newest is about a session.
  void fill() {
    take({started(1, "2024-09-05"), hurt(2, "Q07"), started(3, "2024-09-12"), hurt(4, "Q08"), hurt(5, "Q07")});
    take({started(6, "2026-11-25"), started(7, "2026-11-26")}, kNow);
  }
};

INSTANTIATE_TEST_SUITE_P(Stores, PastOf, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(PastOf, EveningsOfLongAgoGoAndTheRestReadsTheSame) {
  fill();
  const auto head = must(store->audit()).head;
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2024-11-26"), kNow)), 2);
  EXPECT_EQ(receipts(), (std::vector<std::int64_t>{2, 4, 5, 6, 7}));
  EXPECT_EQ(receipts(2, 2), (std::vector<std::int64_t>{4, 5}));
  const Audit audit = must(store->audit());
  EXPECT_FALSE(audit.broken_at);
  EXPECT_EQ(audit.entries, 7);
  EXPECT_EQ(audit.past, 2);
  EXPECT_EQ(audit.head, head) << "the books are those that they were";
  EXPECT_EQ(on_rows("SELECT count(*) FROM evening WHERE day < '2024-11-26'"), "0|");
  EXPECT_EQ(on_rows("SELECT author, received, length(body) FROM entry WHERE receipt = 3"), "||0|");
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2024-11-26"), kNow)), 0) << "done twice it does nothing more";
  EXPECT_EQ(on_rows("SELECT count(*) FROM compaction"), "1|");
  take({started(8, "2026-11-27")}, kNow);
  EXPECT_FALSE(must(store->audit()).broken_at);
  EXPECT_EQ(must(store->gone()).evenings_before, "2024-11-26");
}

TEST_P(PastOf, TheNewestStaysSoThatTheNextFollowsFromIt) {
  take({started(1, "2024-09-05"), started(2, "2024-09-12")});
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2026-01-01"), kNow)), 1);
  EXPECT_EQ(receipts(), std::vector<std::int64_t>{2});
  take({started(3, "2026-11-26")}, kNow);
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2026-01-01"), kNow)), 1);
  EXPECT_EQ(receipts(), std::vector<std::int64_t>{3});
  EXPECT_FALSE(must(store->audit()).broken_at);
}

TEST_P(PastOf, WhatIsAboutNoDayAndNobodyGoesByWhenItCame) {
  const auto taught = [](int n) {
    return entry(n, "coach-taught", R"("coach":"ann","day":"2024-09-01","what":"landing")");
  };
  take({taught(1), hurt(2, "Q07")});
  take({taught(3), started(4, "2026-11-26")}, kNow);
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2024-11-26"), kNow)), 1);
  EXPECT_EQ(receipts(), (std::vector<std::int64_t>{2, 3, 4}));
}

TEST_P(PastOf, EntriesOfErasedPeopleGoAndWhatIsSentAgainIsErasedStill) {
  fill();
  EXPECT_EQ(must(past()->let_go_of_erased(kNow)), 0);
  ASSERT_TRUE(must(store->erase_person("Q07", kNow, test::kNoNote)));
  EXPECT_EQ(must(past()->let_go_of_erased(kNow)), 2);
  EXPECT_EQ(on_rows("SELECT count(*) FROM entry WHERE person IS NOT NULL"), "1|");
  EXPECT_EQ(must(past()->let_go_of_erased(kNow)), 0);
  const auto again = must(store->take_in(kLead, {hurt(2, "Q07"), hurt(9, "Q07")}, shipped_kinds(), kNow));
  EXPECT_EQ(again[0].verdict, Verdict::kErased);
  EXPECT_EQ(again[1].verdict, Verdict::kErased);
  EXPECT_EQ(must(store->audit()).unreadable, 0);
  EXPECT_EQ(receipts(), (std::vector<std::int64_t>{1, 3, 4, 6, 7}));
}

TEST_P(PastOf, WhoLeftIsErasedAndTheListOfTheErasedHasThemFirst) {
  fill();
  const auto directory = backend.open_directory();
  const auto erase = [&](const char* since, const ErasureNote& note) {
    return past()->erase_who_left(day(since), kNow, note);
  };
  EXPECT_EQ(must(erase("2025-01-01", test::kNoNote)), 0) << "no lists were ever kept: nobody has left";
  must(directory->keep({"Quillmere Juniors", {{"u13", "Under-13"}}, {{"Q08", {"u13"}, "Bea", "under 13"}}}, kNow));
  EXPECT_EQ(must(erase("2024-09-05", test::kNoNote)), 0) << "heard of since";
  const ErasureNote full = [](const std::string&, const std::string&) {
    return std::optional<Fault>(Fault{FaultCode::kCannotWrite, {"list", 0, 0, {}}, "a full disk", "room", {}});
  };
  EXPECT_FALSE(erase("2024-09-06", full));
  EXPECT_EQ(on_rows("SELECT count(*) FROM person WHERE sealed_key IS NULL"), "0|") << "then the key stays";
  std::vector<std::string> noted;
  const ErasureNote note = [&](const std::string& tag, const std::string&) {
    noted.push_back(tag);
    return std::optional<Fault>();
  };
  EXPECT_EQ(must(erase("2024-09-06", note)), 1);
  EXPECT_EQ(noted, std::vector<std::string>{tag_text(must(read_key_file(backend.file().key_file())), "Q07")});
  EXPECT_EQ(must(erase("2024-09-06", note)), 0);
  EXPECT_EQ(must(past()->let_go_of_erased(kNow)), 2);
  EXPECT_EQ(must(store->entries_about("Q08", shipped_kinds())).size(), 1U) << "still on the lists";
}

// Longer than the rows that are read at once, and than a compaction.
TEST_P(PastOf, ManyGoInBatchesAndALongRunOfThemIsPassedOver) {
  std::vector<ledger::Entry> entries;
  for (int n = 1; n <= 1201; ++n) entries.push_back(started(n, "2024-09-05"));
  entries.push_back(hurt(1202, "Q07"));
  take(entries);
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2024-11-26"), kNow)), 1201);
  EXPECT_EQ(on_rows("SELECT count(*), sum(entries) FROM compaction"), "3|1201|");
  EXPECT_EQ(receipts(0, 1), std::vector<std::int64_t>{1202}) << "fewer only where no more are there";
  EXPECT_EQ(must(store->audit()).past, 1201);
  EXPECT_EQ(must(store->gone()).entries, (std::vector<ledger::Gap>{{"desk-1", 1, 1201}}));
}

TEST_P(PastOf, NumbersOfWhatWentAreNoGaps) {
  fill();
  must(past()->let_go_of_evenings(day("2024-11-26"), kNow));
  ASSERT_TRUE(must(store->erase_person("Q08", kNow, test::kNoNote)));
  take({started(10, "2026-11-26")}, kNow);
  auto state = ledger::fold(must(store->entries_after(0, 100, shipped_kinds())), shipped_kinds());
  EXPECT_EQ(state.gaps.size(), 3U) << "1, 3 to 4, 8 to 9";
  EXPECT_EQ(ledger::gaps_without(state.gaps, must(store->gone()).entries),
            (std::vector<ledger::Gap>{{"desk-1", 8, 9}}));
}

TEST_P(PastOf, NothingButEmptyingIsAllowedAndNotOfTheNewest) {
  fill();
  const std::string id3 = backend.where().empty() ? "x'00000000000000000000000000000003'"
                                                  : "decode('00000000000000000000000000000003', 'hex')";
  const std::string id7 = backend.where().empty() ? "x'00000000000000000000000000000007'"
                                                  : "decode('00000000000000000000000000000007', 'hex')";
  const std::string none = backend.where().empty() ? "x''" : "''";
  const std::string emptied = "author = '', received = '', person = NULL, body = " + none + ", past = 1";
  for (const std::string& statement : {
           std::string("UPDATE entry SET author = 'bo'"),
           "UPDATE entry SET " + emptied + " WHERE receipt = 3",
           "UPDATE entry SET " + emptied + ", id = " + id3 + ", device = 'x' WHERE receipt = 3",
           "UPDATE entry SET " + emptied + ", id = " + id7 + " WHERE receipt = 7",
           "UPDATE entry SET id = " + id3 + " WHERE receipt = 3",
           std::string("UPDATE entry SET past = 1 WHERE receipt = 3"),
           std::string("DELETE FROM entry WHERE receipt = 3"),
       }) {
    EXPECT_NE(on_rows(statement).find("entries are never "), std::string::npos) << statement;
  }
  must(past()->let_go_of_evenings(day("2024-11-26"), kNow));
  EXPECT_NE(on_rows("UPDATE entry SET past = NULL WHERE receipt = 3").find("entries are never "), std::string::npos);
  EXPECT_NE(on_rows("DELETE FROM compaction").find("compactions are never "), std::string::npos);
  EXPECT_NE(on_rows("UPDATE compaction SET entries = 1").find("compactions are never "), std::string::npos);
  // The one change that the rows take by themselves: the audit finds it.
  EXPECT_EQ(on_rows("UPDATE entry SET " + emptied + ", id = decode('00', 'hex') WHERE receipt = 99").find("never"),
            std::string::npos);
  const std::string id6 = backend.where().empty() ? "x'00000000000000000000000000000006'"
                                                  : "decode('00000000000000000000000000000006', 'hex')";
  EXPECT_EQ(on_rows("UPDATE entry SET author = '', received = '', person = NULL, body = " + none +
                    ", past = 9, id = " + id6 + " WHERE receipt = 6"),
            "");
  EXPECT_EQ(must(store->audit()).broken_at, 6) << "emptied without a sealed compaction";
}

TEST_P(PastOf, WhoeverChangesASealOrBringsARowBackIsFound) {
  fill();
  const std::string body = on_rows(backend.where().empty() ? "SELECT hex(id), hex(body) FROM entry WHERE receipt = 3"
                                                           : "SELECT encode(id, 'hex'), encode(body, 'hex') FROM entry "
                                                             "WHERE receipt = 3");
  const std::string id_hex = body.substr(0, body.find('|'));
  const std::string body_hex = body.substr(id_hex.size() + 1, body.size() - id_hex.size() - 2);
  const auto bytes = [&](const std::string& hex) {
    return backend.where().empty() ? "x'" + hex + "'" : "decode('" + hex + "', 'hex')";
  };
  must(past()->let_go_of_evenings(day("2024-11-26"), kNow));
  ASSERT_FALSE(must(store->audit()).broken_at);
  without_triggers();
  EXPECT_EQ(on_rows("UPDATE compaction SET until_day = '2020-01-01'"), "");
  EXPECT_EQ(must(store->audit()).broken_at, 1) << "the first that it names";
  EXPECT_EQ(on_rows("UPDATE compaction SET until_day = '2024-11-26'"), "");
  EXPECT_FALSE(must(store->audit()).broken_at);
  EXPECT_EQ(on_rows("UPDATE entry SET device = 'desk-2' WHERE receipt = 3"), "");
  EXPECT_EQ(must(store->audit()).broken_at, 1);
  EXPECT_EQ(on_rows("UPDATE entry SET device = 'desk-1' WHERE receipt = 3"), "");
  EXPECT_EQ(on_rows("UPDATE entry SET author = 'bo' WHERE receipt = 3"), "");
  EXPECT_EQ(must(store->audit()).broken_at, 3) << "an emptied row says nothing";
  // As it was, to the byte: the chain holds, the compaction does not.
  EXPECT_EQ(on_rows("UPDATE entry SET author = 'lee', received = '" + kThen + "', past = NULL, id = " + bytes(id_hex) +
                    ", body = " + bytes(body_hex) + " WHERE receipt = 3"),
            "");
  EXPECT_EQ(must(store->audit()).broken_at, 1);
  EXPECT_EQ(on_rows("DELETE FROM compaction"), "");
  EXPECT_EQ(must(store->audit()).broken_at, 1) << "emptied, and no compaction says so";
}

TEST_P(PastOf, ARowThatWasChangedDoesNotGoUnnoticed) {
  fill();
  without_triggers();
  EXPECT_EQ(on_rows("UPDATE entry SET author = 'bo' WHERE receipt = 3"), "");
  EXPECT_FALSE(past()->let_go_of_evenings(day("2024-11-26"), kNow));
  EXPECT_EQ(must(store->audit()).broken_at, 3);
}

TEST_P(PastOf, TheBookOfReadsLosesItsFrontAndStillVerifies) {
  const auto gate = backend.open_gate();
  const std::string ann = test::add(*gate, "ann");
  for (Moment when = 1; when <= 700; ++when)
    must(gate->note_read({0, when, ann, "", "GET squad", "u13", "Q07", 1, ""}));
  EXPECT_EQ(must(past()->let_go_of_reads(1, kNow)), 0);
  EXPECT_EQ(must(past()->let_go_of_reads(601, kNow)), 600);
  EXPECT_EQ(must(past()->let_go_of_reads(601, kNow)), 0);
  const ReadAudit audit = must(gate->audit_reads());
  EXPECT_EQ(audit.notes, 100);
  EXPECT_FALSE(audit.broken_at);
  EXPECT_EQ(must(gate->reads("", 1000)).back().number, 601);
  EXPECT_EQ(must(past()->let_go_of_reads(9999, kNow)), 99) << "the newest stays";
  must(gate->note_read({0, 701, ann, "", "GET squad", "u13", "Q07", 1, ""}));
  EXPECT_FALSE(must(gate->audit_reads()).broken_at);
  EXPECT_NE(on_rows("DELETE FROM read_note").find("read notes are never "), std::string::npos);
  EXPECT_EQ(on_rows("UPDATE read_past SET last_number = 700"), "");
  EXPECT_EQ(must(gate->audit_reads()).broken_at, 1) << "a front that nobody sealed";
}

// What is said to go next is what goes: nothing the day before, and as many as were said on the day.
TEST_P(PastOf, TheOldestIsWhatGoesNext) {
  const Ages nothing = must(past()->ages());
  EXPECT_EQ(nothing.evenings.count + nothing.who_left.count + nothing.kept_aside.count + nothing.read_notes.count, 0);
  EXPECT_EQ(nothing.key_first_used, "");
  fill();
  take({started(8, "2024-09-05"), entry(9, "coach-taught", R"("coach":"ann","day":"2024-09-01","what":"landing")")},
       kNow);
  const auto directory = backend.open_directory();
  EXPECT_EQ(must(past()->ages()).who_left.count, 0) << "no lists were ever kept: nobody has left";
  must(directory->keep({"Quillmere Juniors", {{"u13", "Under-13"}}, {{"Q08", {"u13"}, "Bea", "under 13"}}}, kNow));
  const Ages ages = must(past()->ages());
  EXPECT_EQ(ages.key_first_used, kThen);
  EXPECT_EQ(ages.evenings.day, "2024-09-05");
  EXPECT_EQ(ages.evenings.count, 2);
  EXPECT_EQ(ages.who_left.day, "2024-09-05");
  EXPECT_EQ(ages.who_left.count, 1) << "Q07";
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2024-09-05"), kNow)), 0);
  EXPECT_EQ(must(past()->let_go_of_evenings(day("2024-09-06"), kNow)), ages.evenings.count);
  EXPECT_EQ(must(past()->erase_who_left(day("2024-09-05"), kNow, test::kNoNote)), 0);
  EXPECT_EQ(must(past()->erase_who_left(day("2024-09-06"), kNow, test::kNoNote)), ages.who_left.count);
  EXPECT_EQ(must(past()->ages()).evenings.day, "2024-09-12");
  EXPECT_EQ(must(past()->ages()).who_left.count, 0);
  ASSERT_EQ(must(past()->let_go_of_evenings(day("2026-11-27"), kNow)), 3) << "the newest stays";
  EXPECT_EQ(must(past()->ages()).evenings.count, 0) << "and what stays is not said to go";
}

TEST_P(PastOf, TheOldestNoteIsTheNextToGo) {
  constexpr Moment kDay = 86'400;
  const auto gate = backend.open_gate();
  const std::string ann = test::add(*gate, "ann");
  for (const Moment when : {kDay, kDay + 5, 2 * kDay - 1, 2 * kDay, 9 * kDay})
    must(gate->note_read({0, when, ann, "", "GET squad", "u13", "Q07", 1, ""}));
  const Ages ages = must(past()->ages());
  EXPECT_EQ(ages.read_notes.first, kDay);
  EXPECT_EQ(ages.read_notes.count, 3);
  EXPECT_EQ(must(past()->let_go_of_reads(2 * kDay, kNow)), ages.read_notes.count);
  EXPECT_EQ(must(past()->ages()).read_notes.first, 2 * kDay);
}

TEST_P(PastOf, WhatWentIsNotInTheFilesAnyMore) {
  take(
      {entry(
           1, "wrap-up",
           R"("squad":"u13","start":"18:00","day":"2024-09-05","happened":"held","did_it":"most","note":"canary-evening")"),
       hurt(2, "Q07"), started(3, "2026-11-26")});
  ASSERT_TRUE(must(store->erase_person("Q07", kNow, test::kNoNote)));
  const std::string sealed_body =
      on_rows(backend.where().empty() ? "SELECT hex(body) FROM entry WHERE receipt = 2"
                                      : "SELECT encode(body, 'hex') FROM entry WHERE receipt = 2");
  ASSERT_GT(sealed_body.size(), 80U);
  const auto gone = past();
  EXPECT_EQ(must(gone->let_go_of_evenings(day("2024-11-26"), kNow)), 1);
  EXPECT_EQ(must(gone->let_go_of_erased(kNow)), 1);
  EXPECT_FALSE(gone->wipe());
  EXPECT_EQ(on_rows("SELECT sum(length(body)) FROM entry WHERE receipt < 3"), "0|");
  if (!backend.where().empty()) return;
  std::string sealed_bytes;
  for (std::size_t i = 0; i + 1 < sealed_body.size() - 1; i += 2) {
    sealed_bytes += static_cast<char>(std::stoi(sealed_body.substr(i, 2), nullptr, 16));
  }
  const std::string file = backend.file().file("quillmere");
  for (const char* part : {"", "-wal"}) {
    const std::string bytes = bytes_of_file(file + part);
    EXPECT_EQ(bytes.find("canary-evening"), std::string::npos) << part;
    EXPECT_EQ(bytes.find(sealed_bytes.substr(0, 40)), std::string::npos) << part;
  }
  EXPECT_NE(bytes_of_file(file).find("desk-1"), std::string::npos) << "nothing was looked at";
}

TEST_P(PastOf, ABackupHasItAsItIsAndARestoreKeepsIt) {
  fill();
  must(past()->let_go_of_evenings(day("2024-11-26"), kNow));
  const auto gate = backend.open_gate();
  const std::string ann = test::add(*gate, "ann");
  for (Moment when = 1; when <= 3; ++when) must(gate->note_read({0, when, ann, "", "GET squad", "u13", "Q07", 1, ""}));
  must(past()->let_go_of_reads(3, kNow));
  const std::string folder = backend.file().key_file() + "-backups";
  ASSERT_FALSE(archive::make_backup_keys(folder));
  const Key key = must(read_key_file(backend.file().key_file()));
  const auto back_up = [&] {
    const auto from = backend.where().empty() ? must(sqlite_snapshot(backend.file().file("quillmere")))
                                              : must(postgres_snapshot(backend.where(), "quillmere"));
    return archive::make_backup(*from, key, must(archive::read_public_key(folder + "/backup.public")), folder + "/one",
                                kNow);
  };
  const auto made = back_up();
  ASSERT_TRUE(made) << to_line(made.faults().front());
  EXPECT_EQ(made.value().findings.past, 2);
  for (const char* database : {"SQLite", "PostgreSQL"}) {
    const Backend into(database);
    auto place = into.where().empty()
                     ? must(new_sqlite_store(std::filesystem::path(into.file().file()).parent_path().string()))
                     : must(new_postgres_store(into.where(), "quillmere"));
    const auto restored = archive::restore_backup(
        folder + "/one", must(archive::read_private_key(folder + "/backup.private")), key, {}, *place);
    ASSERT_TRUE(restored) << to_line(restored.faults().front());
    ASSERT_FALSE(place->keep());
    place.reset();
    const auto there =
        into.where().empty()
            ? must(open_sqlite_store(into.file().file(), must(read_key_file(backend.file().key_file()))))
            : must(open_postgres_store(into.where(), "quillmere", must(read_key_file(backend.file().key_file()))));
    const Audit audit = must(there->audit());
    EXPECT_FALSE(audit.broken_at);
    EXPECT_EQ(audit.past, 2);
    EXPECT_EQ(audit.head, must(store->audit()).head);
    const auto reads =
        into.where().empty()
            ? must(open_sqlite_gate(into.file().file(), must(read_key_file(backend.file().key_file()))))
            : must(open_postgres_gate(into.where(), "quillmere", must(read_key_file(backend.file().key_file()))));
    EXPECT_FALSE(must(reads->audit_reads()).broken_at);
  }
  without_triggers();
  on_rows("UPDATE compaction SET made = 'another'");
  std::filesystem::remove(folder + "/one");
  const auto again = back_up();
  ASSERT_FALSE(again) << "a backup of books that somebody emptied is none";
  EXPECT_NE(again.faults().front().found.find("no sealed compaction"), std::string::npos);
}

// A store of its own each time.
TEST_P(PastOf, InAnyOrderTheBooksVerifyAndTheRestReadsTheSame) {
  int clubs = 0;
  EXPECT_TRUE(rc::check([&] {
    if (test::is_left_to_sqlite(++clubs, backend)) return;
    const std::string club = "club " + std::to_string(clubs);
    const auto books = backend.open(club);
    const auto gone = past(club);
    std::map<std::int64_t, std::string> expected;  // by receipt
    std::map<std::int64_t, std::string> about;     // person or day, by receipt
    std::set<std::string> erased;
    std::int64_t newest = 0;
    std::string until;
    const int steps = *rc::gen::inRange(1, 25);
    for (int n = 1; n <= steps; ++n) {
      const int step = *rc::gen::inRange(0, 8);
      const std::string player = "Q0" + std::to_string(*rc::gen::inRange(1, 4));
      const std::string on = "2024-0" + std::to_string(*rc::gen::inRange(1, 9)) + "-05";
      if (step < 5) {
        const ledger::Entry one = step < 3 ? started(n, on) : hurt(n, player);
        const auto verdict = must(books->take_in(kLead, {one}, shipped_kinds(), kThen)).front();
        RC_ASSERT((verdict.verdict == Verdict::kErased) == (step >= 3 && erased.count(player) > 0));
        if (verdict.verdict != Verdict::kStored) continue;
        newest = verdict.receipt;
        expected[newest] = bytes_of(one);
        about[newest] = step < 3 ? on : player;
      } else if (step == 5) {
        static_cast<void>(must(books->erase_person(player, kNow, test::kNoNote)));
        // Nobody is erased of whom nothing was ever entered.
        for (const auto& [receipt, whom] : about) {
          if (whom != player) continue;
          erased.insert(player);
          expected.erase(receipt);
        }
      } else if (step == 6) {
        static_cast<void>(must(gone->let_go_of_erased(kNow)));
        RC_ASSERT(must(gone->let_go_of_erased(kNow)) == 0);
      } else {
        static_cast<void>(must(gone->let_go_of_evenings(day(on.c_str()), kNow)));
        RC_ASSERT(must(gone->let_go_of_evenings(day(on.c_str()), kNow)) == 0);
        std::erase_if(expected, [&](const auto& one) {
          const std::string& when = about.at(one.first);
          return when[0] != 'Q' && when < on && one.first < newest;
        });
      }
      std::map<std::int64_t, std::string> there;
      for (const auto& one : must(books->entries_after(0, 1000, shipped_kinds()))) {
        there[one.receipt] = bytes_of(one.entry);
      }
      RC_ASSERT(there == expected);
      const Audit audit = must(books->audit());
      RC_ASSERT(!audit.broken_at);
      RC_ASSERT(!audit.damaged_at);
      RC_ASSERT(audit.entries == newest);
    }
  }));
}

// The child lets go until it is killed; whatever it had done by then, the books verify and the rest reads the same.
TEST(PastOnSqlite, AKilledProcessLeavesBooksThatVerify) {
  const int rounds = test::is_long_run() ? 40 : 5;
  unsigned random = 4711;
  for (int round = 0; round < rounds; ++round) {
    const Backend backend("SQLite");
    const auto open_past = [&] {
      return must(open_sqlite_past(backend.file().file("quillmere"), must(read_key_file(backend.file().key_file()))));
    };
    {
      std::vector<ledger::Entry> entries;
      for (int n = 1; n <= 6000; ++n) entries.push_back(n % 3 == 0 ? hurt(n, "Q07") : started(n, "2024-09-05"));
      must(backend.open()->take_in(kLead, entries, shipped_kinds(), kThen));
    }
    const pid_t child = ::fork();
    if (child == 0) {
      static_cast<void>(open_past()->let_go_of_evenings(day("2024-11-26"), kNow));
      ::_exit(0);
    }
    random = random * 1664525U + 1013904223U;
    std::this_thread::sleep_for(std::chrono::milliseconds(5 + (random >> 16) % 150));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    const auto store = backend.open();
    const Audit audit = must(store->audit());
    EXPECT_FALSE(audit.broken_at);
    EXPECT_EQ(audit.entries, 6000);
    EXPECT_EQ(audit.past % static_cast<std::int64_t>(kPastAtOnce), 0) << "whole compactions";
    EXPECT_EQ(must(store->entries_about("Q07", shipped_kinds())).size(), 2000U);
    EXPECT_EQ(must(open_past()->let_go_of_evenings(day("2024-11-26"), kNow)), 4000 - audit.past);
    EXPECT_FALSE(must(store->audit()).broken_at);
  }
}

}  // namespace
}  // namespace lanework::store
