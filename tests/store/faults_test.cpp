// A disk that fails at any one of SQLite's calls, a power cut at any of them, and a file of which one byte is another.
#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <random>
#include <set>
#include <sstream>

#include "app/store/archive/records.h"
#include "app/store/sqlite/connection.h"
#include "app/store/sqlite/sqlite_archive.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/store/backend.h"
#include "tests/store/failing_vfs.h"
#include "tests/store/long_run.h"

namespace lanework::store {
namespace {

using ledger::Role;
using ledger::test::about_session;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::FailingVfs;
using test::SqliteFile;

const std::string kNow = "2026-11-26T18:05:00+01:00";
const Sender kCoach{"phone-1", "ann", Role::kCoach, false};
const Sender kBoard{"phone-2", "bo", Role::kBoard, false};
const std::string kErased = "Q02";

ledger::Entry hurt(int n, const std::string& player) {
  return ledger::test::read(entry_text(n, "hurt", "\"player\":\"" + player + "\",\"place\":\"knee\"", n)).value();
}
ledger::Entry started(int n) {
  return ledger::test::read(entry_text(n, "session-started", about_session(), n)).value();
}

std::string name_of(const ledger::Entry& entry) { return to_text(entry.id); }

// An evening of a club on a disk that may fail, and what the club was told of it.
class Evening {
 public:
  explicit Evening(const SqliteFile& file) : file_(file) {}

  void run() {
    for (int n = 1; n <= 10; ++n) {
      if (n == 6) store_.reset();
      send(n);
      if (n == 4) keep_aside();
      if (n == 8) erase();
    }
    store_.reset();
  }

  // What lies in this file, opened without anything that fails, against what was told.
  void check(const std::string& file) const {
    auto opened = sqlite::Connection::open(file);
    ASSERT_TRUE(opened) << to_line(opened.faults().front());
    const auto faults = sqlite::check_form(opened.value());
    ASSERT_FALSE(faults) << to_line(faults->front());
    auto store = open_sqlite_store(file, read_key_file(file_.key_file()).value());
    ASSERT_TRUE(store);
    const Audit audit = store.value()->audit().value();
    ASSERT_FALSE(audit.broken_at || audit.damaged_at);
    const auto entries = store.value()->entries_after(0, 1000, shipped_kinds());
    ASSERT_TRUE(entries) << to_line(entries.faults().front());
    std::set<std::string> there;
    for (const ledger::Received& one : entries.value()) {
      EXPECT_TRUE(there.insert(name_of(one.entry)).second) << "twice";
      EXPECT_EQ(bytes_of(one.entry), sent_.at(name_of(one.entry))) << "half";
    }
    const bool gone = audit.unreadable > 0;
    EXPECT_TRUE(gone || !erased_) << "the erased player is there";
    for (const auto& [name, player] : acknowledged_) {
      EXPECT_EQ(there.count(name), player == kErased && gone ? 0U : 1U) << name << " of " << player;
    }
    for (const auto& [first, second] : batches_) {
      const bool second_there = there.count(second) > 0;
      EXPECT_TRUE(gone || there.count(first) == there.count(second)) << "half of a batch";
      EXPECT_TRUE(second_there || there.count(first) == 0);
    }
    const auto aside = store.value()->quarantined();
    ASSERT_TRUE(aside);
    EXPECT_GE(static_cast<int>(aside.value().size()), aside_);
    // It works again.
    EXPECT_TRUE(store.value()->take_in(kCoach, {started(900)}, shipped_kinds(), kNow));
  }

  [[nodiscard]] std::size_t acknowledged() const { return acknowledged_.size(); }

 private:
  const SqliteFile& file_;
  std::unique_ptr<Store> store_;
  std::map<std::string, std::string> sent_;          // bytes, by id
  std::map<std::string, std::string> acknowledged_;  // player, by id
  std::vector<std::pair<std::string, std::string>> batches_;
  bool erased_ = false;
  int aside_ = 0;

  Store* open() {
    for (int tries = 0; !store_ && tries < 2; ++tries) {
      auto opened = open_sqlite_store(file_.file(), read_key_file(file_.key_file()).value());
      if (opened) store_ = std::move(opened).value();
    }
    return store_.get();
  }

  // As a phone does: what was not acknowledged is sent once more.
  void send(int n) {
    const std::string player = "Q0" + std::to_string(1 + n % 3);
    const std::vector<ledger::Entry> batch = {hurt(n, player), started(100 + n)};
    for (const ledger::Entry& entry : batch) sent_[name_of(entry)] = bytes_of(entry);
    batches_.emplace_back(name_of(batch[0]), name_of(batch[1]));
    for (int tries = 0; tries < 2; ++tries) {
      Store* store = open();
      if (store == nullptr) return;
      const auto verdicts = store->take_in(kCoach, batch, shipped_kinds(), kNow);
      if (!verdicts) continue;
      for (std::size_t i = 0; i < batch.size(); ++i) {
        const Verdict verdict = verdicts.value()[i].verdict;
        if (verdict == Verdict::kErased) continue;
        EXPECT_TRUE(verdict == Verdict::kStored || verdict == Verdict::kKnown);
        acknowledged_[name_of(batch[i])] = i == 0 ? player : "";
      }
      return;
    }
  }

  void keep_aside() {
    Store* store = open();
    if (store != nullptr && store->take_in(kBoard, {hurt(500, "Q01")}, shipped_kinds(), kNow)) ++aside_;
  }

  void erase() {
    Store* store = open();
    if (store == nullptr) return;
    const auto erased = store->erase_person(kErased, kNow, test::kNoNote);
    erased_ = erased.ok() && erased.value();
  }
};

// The nth of twenty in the usual run, every one in the long one.
int step() { return test::is_long_run() ? 1 : 20; }
int first(unsigned seed) { return test::is_long_run() ? 1 : 1 + static_cast<int>(std::mt19937(seed)() % 20); }

struct Disk {
  const char* name;
  FailingVfs::How how;
  bool from_there_on;
};

class FailingDisk : public testing::TestWithParam<Disk> {};

INSTANTIATE_TEST_SUITE_P(Faults, FailingDisk,
                         testing::Values(Disk{"OneErrorOnly", FailingVfs::How::kError, false},
                                         Disk{"ErrorsFromThereOn", FailingVfs::How::kError, true},
                                         Disk{"OneShortReadOrFullDisk", FailingVfs::How::kShort, false},
                                         Disk{"FullFromThereOn", FailingVfs::How::kShort, true}),
                         [](const auto& one) { return std::string(one.param.name); });

TEST_P(FailingDisk, NothingThatWasAcknowledgedIsLostOrDoubledAtAnyCall) {
  const Disk disk = GetParam();
  int runs = 0;
  bool failed = true;
  for (int nth = first(7); failed; nth += step()) {
    const SqliteFile file;
    Evening evening(file);
    {
      FailingVfs vfs;
      vfs.fail(nth, disk.how, disk.from_there_on);
      evening.run();
      failed = vfs.failed();
    }
    evening.check(file.file());
    ASSERT_FALSE(HasFailure()) << disk.name << " at call " << nth;
    ++runs;
    if (!failed) {
      EXPECT_EQ(evening.acknowledged(), 20U - 1U) << "the run that passes clean";
    }
  }
  EXPECT_GT(runs, test::is_long_run() ? 100 : 5);
  RecordProperty("runs", runs);
}

// Of what was not flushed any sectors may be on the disk, and any not.
TEST(PowerCut, AtAnyCallNothingThatWasAcknowledgedIsLostOrDoubled) {
  std::mt19937 random(20261126);
  int runs = 0;
  bool failed = true;
  for (int nth = first(11); failed; nth += step()) {
    const SqliteFile file;
    Evening evening(file);
    std::vector<std::map<std::string, std::string>> left;
    {
      FailingVfs vfs;
      vfs.fail(nth, FailingVfs::How::kOff, true);
      evening.run();
      failed = vfs.failed();
      for (int i = 0; i < 4; ++i) left.push_back(vfs.survivors(random));
    }
    for (const auto& files : left) {
      const SqliteFile after;
      for (const auto& [path, content] : files) {
        const std::string name = path.substr(file.file().size());  // "", "-wal"
        std::ofstream(after.file() + name, std::ios::binary) << content;
      }
      evening.check(after.file());
      ASSERT_FALSE(HasFailure()) << "power cut at call " << nth;
    }
    ++runs;
  }
  EXPECT_GT(runs, test::is_long_run() ? 100 : 5);
}

std::string bytes_of_file(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

// All rows but for when a person's key was made and destroyed, which nothing goes by; empty where they cannot be read.
std::string rows_of(const std::string& file) {
  const auto from = sqlite_snapshot(file);
  if (!from) return {};
  std::string out;
  for (const archive::Table& table : archive::tables()) {
    const auto fault = from.value()->each(table, [&](const archive::Cells& cells) {
      for (std::size_t i = 0; i < cells.size(); ++i) {
        const std::string& name = table.columns[i].name;
        if (name == "made" || name == "erased") continue;
        out += archive::row_text({cells[i]});
      }
      return std::optional<Fault>();
    });
    if (fault) return {};
  }
  return out;
}

// What whoever uses this file gets to know: all that is handed out, or a fault.
struct Served {
  bool told = false;  // by opening, handing out or checking the books
  std::string entries;
};
Served served_of(const std::string& file, const std::string& key_file) {
  auto store = open_sqlite_store(file, read_key_file(key_file).value());
  if (!store) return {true, {}};
  Served out;
  const auto entries = store.value()->entries_after(0, 100'000, shipped_kinds());
  const auto aside = store.value()->quarantined();
  const auto audit = store.value()->audit();
  out.told = !entries || !aside || !audit || audit.value().broken_at || audit.value().damaged_at;
  if (entries) {
    for (const ledger::Received& one : entries.value()) {
      out.entries += std::to_string(one.receipt) + one.author + one.device + one.received + bytes_of(one.entry);
    }
  }
  return out;
}

TEST(FlippedByte, InAnyPageIsToldAndNoEntryIsHandedOutOtherThanItWas) {
  const SqliteFile file;
  {
    auto store = file.open();
    for (int n = 1; n <= 150; ++n) {
      ASSERT_TRUE(
          store->take_in(kCoach, {hurt(n, "Q0" + std::to_string(n % 5)), started(1000 + n)}, shipped_kinds(), kNow));
      if (n % 10 == 0) {
        ASSERT_TRUE(store->take_in(kBoard, {hurt(2000 + n, "Q01")}, shipped_kinds(), kNow));
      }
    }
    ASSERT_TRUE(store->erase_person("Q03", kNow, test::kNoNote).value());
  }
  const std::string whole = bytes_of_file(file.file());
  const std::string rows = rows_of(file.file());
  const Served sound = served_of(file.file(), file.key_file());
  ASSERT_FALSE(sound.told);
  constexpr std::size_t kPage = 4096;
  const std::size_t pages = whole.size() / kPage;
  ASSERT_GT(pages, 30U);
  const int flips_a_page = test::is_long_run() ? 40 : 2;
  std::mt19937 random(4096);
  int told = 0;
  int harmless = 0;
  for (std::size_t page = 0; page < pages; ++page) {
    for (int flip = 0; flip < flips_a_page; ++flip) {
      const SqliteFile other;
      const std::size_t at = page * kPage + random() % kPage;
      std::string changed = whole;
      changed[at] = static_cast<char>(changed[at] ^ (1 << (random() % 8)));
      std::ofstream(other.file(), std::ios::binary) << changed;
      const Served served = served_of(other.file(), file.key_file());
      if (served.told) {
        ++told;
        // What is handed out all the same is a first part of what was there.
        EXPECT_EQ(sound.entries.compare(0, served.entries.size(), served.entries), 0) << "byte " << at;
        continue;
      }
      ++harmless;
      EXPECT_EQ(served.entries, sound.entries) << "byte " << at << " of page " << page + 1;
      EXPECT_EQ(rows_of(other.file()), rows) << "byte " << at << " of page " << page + 1;
    }
  }
  EXPECT_GT(told, harmless / 2) << "pages of tables without rows are nearly all free, the others nearly full";
  RecordProperty("told", told);
  RecordProperty("harmless", harmless);
}

}  // namespace
}  // namespace lanework::store
