// Backups: from each database into each, and everything that may have happened to the file in between.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <array>
#include <atomic>
#include <fstream>
#include <set>
#include <sstream>
#include <thread>

#include "app/store/archive/backup.h"
#include "app/store/archive/new_folder.h"
#include "app/store/postgres/connection.h"
#include "app/store/postgres/postgres_archive.h"
#include "app/store/sqlite/connection.h"
#include "app/store/sqlite/sqlite_archive.h"
#include "core/ledger/canonical.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/store/backend.h"
#include "tests/store/failing_vfs.h"
#include "tests/store/long_run.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

namespace fs = std::filesystem;
using archive::Contents;
using archive::ErasureList;
using ledger::Role;
using ledger::test::about_session;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::Backend;

const std::string kNow = "2026-11-26T18:05:00+01:00";
const std::string kLater = "2026-12-01T09:00:00+01:00";
const Sender kCoach{"phone-1", "ann", Role::kCoach, false};
const Sender kBoard{"phone-1", "ann", Role::kBoard, false};

ledger::Entry hurt(int n, const std::string& player = "Q07") {
  return ledger::test::read(entry_text(n, "hurt", "\"player\":\"" + player + "\",\"place\":\"knee\"", n)).value();
}
ledger::Entry started(int n) {
  return ledger::test::read(entry_text(n, "session-started", about_session(), n)).value();
}

std::string state_of(Store& store) {
  auto entries = store.entries_after(0, 100'000, shipped_kinds());
  if (!entries) return to_line(entries.faults().front());
  return ledger::canonical_json(to_node(ledger::fold(std::move(entries).value(), shipped_kinds()))).value();
}

std::string bytes_of_file(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

void write_file(const std::string& file, const std::string& bytes) { std::ofstream(file, std::ios::binary) << bytes; }

// A store, with the keys of its backups.
class Kept {
 public:
  explicit Kept(const std::string& database) : backend_(database), folder_(backend_.file().key_file() + "-backups") {
    EXPECT_FALSE(archive::make_backup_keys(folder_));
  }
  [[nodiscard]] const Backend& backend() const { return backend_; }
  [[nodiscard]] Key key() const { return read_key_file(backend_.file().key_file()).value(); }
  [[nodiscard]] Key private_key() const { return archive::read_private_key(folder_ + "/backup.private").value(); }
  [[nodiscard]] std::string path(const std::string& name) const { return folder_ + "/" + name; }

  [[nodiscard]] Result<std::unique_ptr<archive::Snapshot>> snapshot(const std::string& club = "quillmere") const {
    return backend_.where().empty() ? sqlite_snapshot(backend_.file().file(club))
                                    : postgres_snapshot(backend_.where(), club);
  }
  [[nodiscard]] Result<Contents> back_up(const std::string& name, const std::string& club = "quillmere") const {
    const auto from = snapshot(club);
    if (!from) return from.faults();
    return archive::make_backup(*from.value(), key(), archive::read_public_key(path("backup.public")).value(),
                                path(name), kNow);
  }
  // Into a new store of its own, by this ledger's keys.
  struct Restored {
    Result<archive::Restored> said;
    std::unique_ptr<Store> store;
  };
  [[nodiscard]] Restored restore(const std::string& file, const Backend& into,
                                 const std::optional<ErasureList>& erased = {},
                                 const std::string& club = "quillmere") const {
    auto place = new_store(into, club);
    if (!place) return {place.faults(), nullptr};
    auto said = archive::restore_backup(file, private_key(), key(), erased, *place.value());
    if (!said) return {said.faults(), nullptr};
    if (auto fault = place.value()->keep()) return {*fault, nullptr};
    place.value().reset();
    auto store = into.where().empty() ? open_sqlite_store(into.file().file(), key())
                                      : open_postgres_store(into.where(), club, key());
    return {std::move(said), std::move(store).value()};
  }
  static Result<std::unique_ptr<archive::NewStore>> new_store(const Backend& into,
                                                              const std::string& club = "quillmere") {
    return into.where().empty() ? new_sqlite_store(fs::path(into.file().file()).parent_path().string())
                                : new_postgres_store(into.where(), club);
  }

 private:
  Backend backend_;
  std::string folder_;
};

ErasureList list_of(const Kept& kept, const std::vector<std::string>& players) {
  ErasureList out;
  for (const std::string& player : players) out.people.emplace(tag_text(kept.key(), player), kLater);
  return out;
}

// Something of everything: two of one player, one of another, a session, one kept aside.
void fill(Store& store) {
  ASSERT_TRUE(store.take_in(kCoach, {started(1), hurt(2), hurt(3, "Q08"), hurt(4)}, shipped_kinds(), kNow));
  ASSERT_TRUE(store.take_in(kBoard, {hurt(5)}, shipped_kinds(), kNow));
}

struct Way {
  const char* from;
  const char* into;
};

class Archive : public testing::TestWithParam<Way> {};

INSTANTIATE_TEST_SUITE_P(Ways, Archive,
                         testing::Values(Way{"SQLite", "SQLite"}, Way{"SQLite", "PostgreSQL"},
                                         Way{"PostgreSQL", "SQLite"}, Way{"PostgreSQL", "PostgreSQL"}),
                         [](const auto& one) { return std::string(one.param.from) + "Into" + one.param.into; });

TEST_P(Archive, WhatIsRestoredIsWhatWasThere) {
  const Kept kept(GetParam().from);
  auto store = kept.backend().open();
  fill(*store);
  const auto made = kept.back_up("one");
  ASSERT_TRUE(made) << to_line(made.faults().front());
  EXPECT_EQ(made.value().findings.opened, 3);
  const Backend into(GetParam().into);
  const auto restored = kept.restore(kept.path("one"), into);
  ASSERT_TRUE(restored.store) << to_line(restored.said.faults().front());
  EXPECT_EQ(state_of(*restored.store), state_of(*store));
  EXPECT_EQ(restored.store->audit().value().head, store->audit().value().head);
  const auto aside = restored.store->quarantined().value();
  ASSERT_EQ(aside.size(), 1U);
  EXPECT_EQ(aside[0].bytes, store->quarantined().value()[0].bytes);
  // It goes on where the backup ended.
  const auto more = restored.store->take_in(kCoach, {hurt(2), hurt(6)}, shipped_kinds(), kNow);
  ASSERT_TRUE(more);
  EXPECT_EQ(more.value()[0].verdict, Verdict::kKnown);
  EXPECT_EQ(more.value()[1].receipt, 5);
  ASSERT_TRUE(restored.store->take_in(kBoard, {hurt(7)}, shipped_kinds(), kNow));
  EXPECT_EQ(restored.store->quarantined().value().size(), 2U);
}

TEST_P(Archive, WhoWasErasedSinceDoesNotComeBack) {
  const Kept kept(GetParam().from);
  auto store = kept.backend().open();
  fill(*store);
  // Kept aside about one of them.
  ASSERT_TRUE(store->take_in(kBoard, {hurt(9, "Q07")}, shipped_kinds(), kNow));
  const std::size_t aside = store->quarantined().value().size();
  ASSERT_TRUE(kept.back_up("before"));
  ASSERT_TRUE(store->take_in(kCoach, {hurt(8, "Q09")}, shipped_kinds(), kNow));
  for (const char* player : {"Q07", "Q09"}) ASSERT_TRUE(store->erase_person(player, kLater, test::kNoNote).value());
  const Backend into(GetParam().into);
  const auto restored = kept.restore(kept.path("before"), into, list_of(kept, {"Q07", "Q09"}));
  ASSERT_TRUE(restored.store) << to_line(restored.said.faults().front());
  EXPECT_EQ(restored.said.value().erased.people, list_of(kept, {"Q07", "Q09"}).people);
  const auto left = restored.store->quarantined().value();
  EXPECT_LT(left.size(), aside);
  for (const Quarantined& one : left) EXPECT_EQ(one.bytes.find("Q07"), std::string::npos);
  EXPECT_EQ(state_of(*restored.store).find("Q07"), std::string::npos);
  EXPECT_NE(state_of(*restored.store).find("Q08"), std::string::npos);
  const Audit audit = restored.store->audit().value();
  EXPECT_EQ(audit.unreadable, 2);
  EXPECT_FALSE(audit.broken_at || audit.damaged_at);
  // Q09 came after the backup: a phone that sends the entry again does not bring the player back either.
  const auto again = restored.store->take_in(kCoach, {hurt(8, "Q09"), hurt(9)}, shipped_kinds(), kNow);
  ASSERT_TRUE(again);
  for (const EntryVerdict& verdict : again.value()) EXPECT_EQ(verdict.verdict, Verdict::kErased);
}

TEST_P(Archive, ABackupWhileOthersWriteIsOneMoment) {
  const Kept kept(GetParam().from);
  auto store = kept.backend().open();
  std::atomic<bool> over = false;
  std::atomic<int> written = 0;
  std::thread writing([&] {
    auto other = kept.backend().open();
    for (int n = 1; !over; n += 5) {
      std::vector<ledger::Entry> batch;
      for (int i = 0; i < 5; ++i) batch.push_back(hurt(n + i, "Q" + std::to_string((n + i) % 7)));
      if (other->take_in(kCoach, batch, shipped_kinds(), kNow)) written += 5;
    }
  });
  std::vector<Contents> made;
  for (int i = 0; i < 5; ++i) {
    while (written < 20 * (i + 1)) std::this_thread::yield();
    auto one = kept.back_up("moment-" + std::to_string(i));
    ASSERT_TRUE(one) << to_line(one.faults().front());
    made.push_back(one.value());
  }
  const int before_end = written;
  while (written <= before_end) std::this_thread::yield();
  over = true;
  writing.join();
  for (std::size_t i = 0; i < made.size(); ++i) {
    const Backend into(GetParam().into);
    const auto restored = kept.restore(kept.path("moment-" + std::to_string(i)), into);
    ASSERT_TRUE(restored.store) << to_line(restored.said.faults().front());
    const Audit audit = restored.store->audit().value();
    EXPECT_EQ(audit.entries, made[i].manifest.head.receipt);
    EXPECT_EQ(audit.entries % 5, 0) << "half of a batch";
    EXPECT_LE(audit.entries, written);
    EXPECT_EQ(restored.store->entries_after(0, 100'000, shipped_kinds()).value().size(),
              static_cast<std::size_t>(audit.entries));
  }
}

// Restored and backed up again, the rows are the same, whatever they lay in. Every ledger is a club, or a file, of its
// own.
TEST_P(Archive, AnyLedgerComesBackRowByRow) {
  const Kept kept(GetParam().from);
  const Backend shared(GetParam().into);
  int ledgers = 0;
  EXPECT_TRUE(rc::check([&] {
    if (test::is_left_to_sqlite(++ledgers, kept.backend()) || test::is_left_to_sqlite(ledgers, shared)) return;
    const std::string club = "club " + std::to_string(ledgers);
    auto store = kept.backend().open(club);
    const int batches = *rc::gen::inRange(0, 6);
    for (int batch = 0; batch < batches; ++batch) {
      std::vector<ledger::Entry> entries;
      const int count = *rc::gen::inRange(1, 8);
      for (int i = 0; i < count; ++i) {
        const int n = 1 + 10 * batch + i;
        const std::string player = "Q" + std::to_string(*rc::gen::inRange(1, 6));
        entries.push_back(*rc::gen::inRange(0, 3) == 0 ? started(n) : hurt(n, player));
      }
      const bool aside = *rc::gen::inRange(0, 4) == 0;
      RC_ASSERT(store->take_in(aside ? kBoard : kCoach, entries, shipped_kinds(), kNow).ok());
      if (*rc::gen::inRange(0, 3) > 0) continue;
      const std::string gone = "Q" + std::to_string(*rc::gen::inRange(1, 6));
      static_cast<void>(store->erase_person(gone, kLater, test::kNoNote).value());
    }
    const auto made = kept.back_up(club, club);
    RC_ASSERT(made.ok());
    const std::unique_ptr<Backend> own = shared.where().empty() ? std::make_unique<Backend>("SQLite") : nullptr;
    const Backend& into = own ? *own : shared;
    const auto restored = kept.restore(kept.path(club), into, {}, club);
    RC_ASSERT(restored.store != nullptr);
    RC_ASSERT(state_of(*restored.store) == state_of(*store));
    const auto again =
        into.where().empty() ? sqlite_snapshot(into.file().file()) : postgres_snapshot(into.where(), club);
    const auto second =
        archive::make_backup(*again.value(), kept.key(), archive::read_public_key(kept.path("backup.public")).value(),
                             kept.path(club + " again"), kNow);
    RC_ASSERT(second.ok());
    RC_ASSERT(second.value().manifest.digest == made.value().manifest.digest);
  }));
}

TEST_P(Archive, AFaultLeavesNothingBehindAndTheNextTryGoes) {
  const Kept kept(GetParam().from);
  auto store = kept.backend().open();
  fill(*store);
  ASSERT_TRUE(kept.back_up("whole"));
  const std::string whole = bytes_of_file(kept.path("whole"));
  write_file(kept.path("cut"), whole.substr(0, whole.size() - 10));
  const Backend into(GetParam().into);
  EXPECT_FALSE(kept.restore(kept.path("cut"), into).store);
  ASSERT_TRUE(store->erase_person("Q08", kNow, test::kNoNote).value());
  ASSERT_TRUE(kept.back_up("erased"));
  const auto not_listed = kept.restore(kept.path("erased"), into, list_of(kept, {"Q07"}));
  ASSERT_FALSE(not_listed.store);
  EXPECT_EQ(not_listed.said.faults().front().found, "1 people whom the backup knows as erased and the list does not");
  if (into.where().empty()) fs::remove(into.file().file());  // its folder is what the command line removes
  EXPECT_TRUE(kept.restore(kept.path("whole"), into).store);
  EXPECT_FALSE(kept.restore(kept.path("whole"), into).store) << "into a place where something is";
}

class ArchiveFile : public testing::Test {
 protected:
  ArchiveFile() : kept("SQLite") {
    auto store = kept.backend().open();
    fill(*store);
    static_cast<void>(kept.back_up("whole").value());
    whole = bytes_of_file(kept.path("whole"));
  }
  // The fault that a file of these bytes gives; empty where it is taken.
  [[nodiscard]] std::string fault_of(const std::string& bytes) const {
    class Nobody final : public archive::RowTaker {
      std::optional<Fault> header(const archive::Header&) override { return {}; }
      std::optional<Fault> table(const archive::Table&) override { return {}; }
      std::optional<Fault> row(const archive::Cells&) override { return {}; }
    } nobody;
    write_file(kept.path("changed"), bytes);
    auto from = archive::OpeningReader::open(kept.path("changed"), kept.private_key());
    if (!from) return to_line(from.faults().front());
    const auto read = archive::read_archive(from.value(), kept.key(), nobody);
    return read ? std::string() : to_line(read.faults().front());
  }
  Kept kept;
  std::string whole;
};

TEST_F(ArchiveFile, EveryByteIsBound) {
  ASSERT_EQ(fault_of(whole), "");
  for (std::size_t i = 0; i < whole.size(); ++i) {
    std::string changed = whole;
    changed[i] = static_cast<char>(changed[i] ^ (1 << (i % 8)));
    EXPECT_NE(fault_of(changed), "") << "byte " << i << " of " << whole.size();
  }
}

TEST_F(ArchiveFile, CutAnywhereOrLongerItIsAFault) {
  for (std::size_t length = 0; length < whole.size(); ++length) {
    EXPECT_NE(fault_of(whole.substr(0, length)), "") << length << " of " << whole.size();
  }
  EXPECT_NE(fault_of(whole + '\0'), "");
  EXPECT_NE(fault_of(whole + whole), "");
}

TEST_F(ArchiveFile, ManyPiecesAreBoundToTheirPlaces) {
  auto store = kept.backend().open();
  for (int batch = 0; batch < 8; ++batch) {
    std::vector<ledger::Entry> entries;
    for (int i = 0; i < 100; ++i) entries.push_back(hurt(1000 + 100 * batch + i));
    ASSERT_TRUE(store->take_in(kCoach, entries, shipped_kinds(), kNow));
  }
  ASSERT_TRUE(kept.back_up("long"));
  const std::string all = bytes_of_file(kept.path("long"));
  constexpr std::size_t kHead = 152;
  constexpr std::size_t kPiece = 65536 + 17;
  ASSERT_GT(all.size(), kHead + 2 * kPiece) << "one piece proves nothing";
  ASSERT_EQ(fault_of(all), "");
  EXPECT_NE(fault_of(all.substr(0, kHead + kPiece)), "") << "cut after a piece";
  EXPECT_NE(fault_of(all.substr(0, kHead) + all.substr(kHead + kPiece)), "") << "without the first";
  EXPECT_NE(fault_of(all.substr(0, kHead) + all.substr(kHead + kPiece, kPiece) + all.substr(kHead, kPiece) +
                     all.substr(kHead + 2 * kPiece)),
            "")
      << "two in the other order";
}

TEST_F(ArchiveFile, NothingOfItLiesThereInTheClear) {
  for (const std::string word : {"knee", "Q07", "phone-1", "ann", "u13", "person", "entry", "SQLite", "2026-11"}) {
    EXPECT_EQ(whole.find(word), std::string::npos) << word;
  }
  EXPECT_EQ(whole.find(bytes_text(kept.key())), std::string::npos) << "the store's key";
  EXPECT_EQ(whole.find(bytes_text(kept.private_key())), std::string::npos) << "the private key";
  // Beyond its head every byte is as likely as any other: none of 256 stands out.
  std::array<int, 256> counts{};
  for (std::size_t i = 16; i < whole.size(); ++i) ++counts.at(static_cast<unsigned char>(whole[i]));
  const double expected = static_cast<double>(whole.size() - 16) / 256;
  double chi_square = 0;
  for (const int count : counts) chi_square += (count - expected) * (count - expected) / expected;
  EXPECT_LT(chi_square, 400) << "255 on average, 400 once in ten million files";
  EXPECT_GT(chi_square, 140);
}

TEST_F(ArchiveFile, OtherKeysOpenNothing) {
  const Key other = Key::made();
  const auto by_other = archive::OpeningReader::open(kept.path("whole"), other);
  ASSERT_FALSE(by_other);
  EXPECT_NE(by_other.faults().front().found.find("made for another key"), std::string::npos);
  const Backend into("SQLite");
  const auto place = Kept::new_store(into);
  const auto wrong = archive::restore_backup(kept.path("whole"), kept.private_key(), other, {}, *place.value());
  ASSERT_FALSE(wrong);
  EXPECT_EQ(wrong.faults().front().found, "a person's key that does not open");
}

// Whoever has the public key can seal a file to it, but not with this ledger's witness.
TEST_F(ArchiveFile, WhatSomebodyElseMadeForThePublicKeyIsNotTaken) {
  const Backend theirs("SQLite");
  ASSERT_TRUE(theirs.open()->take_in(kCoach, {started(1)}, shipped_kinds(), kNow));
  EXPECT_EQ(test::Raw(theirs.file().file("quillmere")).run("DELETE FROM key_check"), "") << "a forger leaves it out";
  const auto from = sqlite_snapshot(theirs.file().file("quillmere"));
  const Key their_key = read_key_file(theirs.file().key_file()).value();
  ASSERT_TRUE(archive::make_backup(*from.value(), their_key,
                                   archive::read_public_key(kept.path("backup.public")).value(), kept.path("forged"),
                                   kNow));
  EXPECT_NE(fault_of(bytes_of_file(kept.path("forged"))).find("was not written with this ledger's key"),
            std::string::npos);
}

TEST_F(ArchiveFile, KeysAreNotTakenForOneAnother) {
  const std::string store_key = kept.backend().file().key_file();
  for (const std::string& file : {kept.path("backup.private"), store_key}) {
    EXPECT_FALSE(archive::read_public_key(file)) << file;
  }
  for (const std::string& file : {kept.path("backup.public"), store_key}) {
    EXPECT_FALSE(archive::read_private_key(file)) << file;
  }
  EXPECT_FALSE(read_key_file(kept.path("backup.private")));
  fs::permissions(kept.path("backup.private"), fs::perms::group_read, fs::perm_options::add);
  const auto open = archive::read_private_key(kept.path("backup.private"));
  ASSERT_FALSE(open);
  EXPECT_EQ(open.faults().front().found, "a file that others may read");
  EXPECT_TRUE(archive::make_backup_keys(kept.path(""))) << "never over keys that are there";
}

TEST_F(ArchiveFile, ABackupOfBooksThatDoNotHoldIsNotMade) {
  EXPECT_FALSE(kept.back_up("whole")) << "a name that is taken";
  const Key other = Key::made();
  const auto from = kept.snapshot();
  const auto made =
      archive::make_backup(*from.value(), other, archive::read_public_key(kept.path("backup.public")).value(),
                           kept.path("by another key"), kNow);
  EXPECT_FALSE(made);
  for (const auto& entry : fs::directory_iterator(kept.path(""))) {
    EXPECT_EQ(entry.path().filename().string().find("by another key"), std::string::npos) << entry.path();
  }
  EXPECT_EQ(bytes_of_file(kept.path("whole")), whole);
}

// The disk of the ledger, or of the new one, fails at one of SQLite's calls: a whole backup, a whole ledger, or a
// fault.
TEST_F(ArchiveFile, ADiskThatFailsGivesAWholeOneOrAFault) {
  const std::string state = state_of(*kept.backend().open());
  const int step = test::is_long_run() ? 1 : 7;
  bool failed = true;
  int faults = 0;
  for (int nth = 1; failed; nth += step) {
    const std::string name = "call " + std::to_string(nth);
    test::FailingVfs vfs;
    vfs.fail(nth, test::FailingVfs::How::kError, false);
    const auto made = kept.back_up(name);
    failed = vfs.failed();
    vfs.stop();
    faults += made ? 0 : 1;
    EXPECT_EQ(made.ok(), fs::exists(kept.path(name))) << name;
    if (made) {
      EXPECT_EQ(fault_of(bytes_of_file(kept.path(name))), "") << name;
    }
  }
  failed = true;
  for (int nth = 1; failed; nth += step) {
    const Backend into("SQLite");
    bool done = false;
    {
      test::FailingVfs vfs;
      vfs.fail(nth, test::FailingVfs::How::kError, false);
      auto place = Kept::new_store(into);
      done = place && archive::restore_backup(kept.path("whole"), kept.private_key(), kept.key(), {}, *place.value()) &&
             !place.value()->keep();
      failed = vfs.failed();
    }
    faults += done ? 0 : 1;
    if (done) {
      auto store = open_sqlite_store(into.file().file(), kept.key());
      ASSERT_TRUE(store);
      EXPECT_EQ(state_of(*store.value()), state) << "call " << nth;
    }
  }
  EXPECT_GT(faults, 3) << "nothing failed";
}

// A migration that adds a table or a column adds it to the list of what a backup holds, or this fails.
TEST(ArchiveTables, EveryTableAndColumnOfBothDatabasesStandsOnTheList) {
  const std::string ours = [] {
    std::set<std::string> lines;
    for (const archive::Table& table : archive::tables()) {
      for (const archive::Column& column : table.columns) lines.insert(table.name + "." + column.name);
    }
    std::string out;
    for (const std::string& line : lines) out += line + "\n";
    return out;
  }();
  const Backend file("SQLite");
  static_cast<void>(file.open());
  auto connection = sqlite::Connection::open_as_it_is(file.file().file("quillmere"));
  ASSERT_TRUE(connection);
  sqlite::Statement of_file(
      connection.value().database(),
      "SELECT group_concat(line, '') FROM (SELECT s.name || '.' || c.name || char(10) AS line "
      "FROM sqlite_schema AS s, pragma_table_info(s.name) AS c "
      "WHERE s.type = 'table' AND s.name NOT LIKE 'sqlite_%' AND c.name <> 'club' "
      "AND s.name NOT IN ('web_session', 'pairing', 'attempt', 'lists', 'planning_job') ORDER BY line)");
  ASSERT_EQ(of_file.step(), sqlite::Statement::Step::kRow);
  EXPECT_EQ(of_file.text(0), ours);
  const Backend database("PostgreSQL");
  static_cast<void>(database.open());
  auto asked = postgres::Connection::open(database.where());
  ASSERT_TRUE(asked);
  const auto of_database = asked.value().ask(
      "SELECT string_agg(c.relname || '.' || a.attname || chr(10), '' ORDER BY (c.relname || '.' || a.attname) COLLATE "
      "\"C\") FROM pg_class AS c JOIN pg_attribute AS a ON a.attrelid = c.oid WHERE c.relnamespace = "
      "'public'::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relispartition AND a.attnum > 0 AND NOT "
      "a.attisdropped AND a.attname <> 'club' AND c.relname NOT IN ('club', 'form', 'web_session', "
      "'pairing', 'attempt', 'lists', 'planning_job')");
  ASSERT_TRUE(of_database);
  EXPECT_EQ(of_database.value().text(0, 0), ours);
}

TEST(ArchiveSource, AClubOrAFileThatIsNotThereIsNoEmptyBackup) {
  const Kept kept("PostgreSQL");
  static_cast<void>(kept.backend().open());
  const auto nobody = kept.back_up("one", "nobody");
  ASSERT_FALSE(nobody);
  EXPECT_EQ(nobody.faults().front().place.field, "--club");
  const test::SqliteFile file;
  EXPECT_FALSE(sqlite_snapshot(file.file()));
  EXPECT_FALSE(fs::exists(file.file()));
}

TEST(ErasureListFile, LinesAreAddedAndReadBackAndChangedOnesAreFaults) {
  const test::SqliteFile folder;
  const std::string file = folder.file("erased");
  const std::string tag(kTagBytes, '\x5a');
  const std::string other(kTagBytes, '\x11');
  EXPECT_FALSE(archive::read_erasure_list(file)) << "not there";
  EXPECT_FALSE(archive::add_to_erasure_list(file, tag, kNow));
  EXPECT_FALSE(archive::add_to_erasure_list(file, tag, kLater));
  EXPECT_FALSE(archive::add_to_erasure_list(file, other, kLater));
  const auto list = archive::read_erasure_list(file);
  ASSERT_TRUE(list);
  EXPECT_EQ(list.value().people, (std::map<std::string, std::string>{{tag, kNow}, {other, kLater}}));
  const std::string text = bytes_of_file(file);
  for (std::size_t i = 0; i < text.size(); ++i) {
    std::string changed = text;
    changed[i] = static_cast<char>(changed[i] ^ 1);
    write_file(file, changed);
    EXPECT_FALSE(archive::read_erasure_list(file)) << "byte " << i;
  }
  // A line that a power cut left half is told, and taken off by the next one.
  write_file(file, text.substr(0, text.size() - 20));
  EXPECT_FALSE(archive::read_erasure_list(file));
  EXPECT_FALSE(archive::add_to_erasure_list(file, other, kLater));
  EXPECT_EQ(bytes_of_file(file), text);
}

TEST(ErasureListFile, NobodyIsErasedWhoDoesNotStandOnIt) {
  for (const char* database : {"SQLite", "PostgreSQL"}) {
    const Backend backend(database);
    auto store = backend.open();
    ASSERT_TRUE(store->take_in(kCoach, {hurt(1)}, shipped_kinds(), kNow));
    int asked = 0;
    const ErasureNote full = [&](const std::string&, const std::string&) {
      ++asked;
      return std::optional<Fault>(archive::cannot_write("erased.list", "no room"));
    };
    EXPECT_FALSE(store->erase_person("Q07", kLater, full)) << database;
    EXPECT_NE(state_of(*store).find("Q07"), std::string::npos) << database;
    EXPECT_FALSE(store->erase_person("Q99", kLater, full).value()) << "whoever is not there is not put on it";
    EXPECT_EQ(asked, 1);
  }
}

}  // namespace
}  // namespace lanework::store
