// What was kept aside becomes part of the books, or goes: once, as whose it was, and never what must not be kept.
#include <gtest/gtest.h>

#include <atomic>
#include <fstream>
#include <iterator>
#include <latch>
#include <thread>

#include "tests/ledger/shipped_kinds.h"
#include "tests/store/backend.h"
#include "tests/store/raw_statements.h"

namespace lanework::store {
namespace {

using ledger::Role;
using ledger::test::about_session;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::Backend;

const std::string kThen = "2026-11-20T18:05:00+01:00";
const std::string kNow = "2026-11-26T18:05:00+01:00";
const Sender kCoach{"phone-1", "ann", Role::kCoach, false};
const Sender kGone{"phone-2", "bo", Role::kRecorder, true};
const Sender kLead{"desk-1", "lee", Role::kLead, false};
const Decision kByLee{"lee", kNow, "taken-in"};

ledger::Entry entry(int n, const std::string& kind, const std::string& fields) {
  return ledger::test::read(entry_text(n, kind, fields, n)).value();
}
ledger::Entry hurt(int n, const std::string& player = "Q07", const std::string& place = "knee") {
  return entry(n, "hurt", "\"player\":\"" + player + "\",\"place\":\"" + place + "\"");
}
ledger::Entry attendance(int n, int there = 3) {
  return entry(n, "attendance", about_session("\"there\":" + std::to_string(there)));
}
ledger::Entry consent(int n, const std::string& answer) {
  return entry(
      n, "consent",
      R"("player":"Q07","purpose":"injury-record","by":"guardian","day":"2026-09-01","answer":")" + answer + "\"");
}
ledger::Entry injury(int n) { return entry(n, "injury-opened", R"("player":"Q07","squad":"u13","day":"2026-11-20")"); }

std::vector<EntryVerdict> take(Store& store, const Sender& sender, const std::vector<ledger::Entry>& entries) {
  const auto verdicts = store.take_in(sender, entries, shipped_kinds(), kThen);
  if (!verdicts) throw std::runtime_error(to_line(verdicts.faults().front()));
  return verdicts.value();
}
std::vector<ledger::Received> all(Store& store) { return store.entries_after(0, 100'000, shipped_kinds()).value(); }
LookedAt take_in(Store& store, std::int64_t number) {
  const auto looked = store.take_in_kept(number, kByLee, shipped_kinds());
  if (!looked) throw std::runtime_error(to_line(looked.faults().front()));
  return looked.value();
}
std::int64_t only_number(Store& store) {
  const auto aside = store.quarantined().value();
  return aside.size() == 1 ? aside.front().number : -1;
}

class KeptAside : public testing::TestWithParam<const char*> {};

INSTANTIATE_TEST_SUITE_P(Stores, KeptAside, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(KeptAside, BecomesPartOfTheBooksAsItsSenders) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kCoach, {attendance(1)});
  take(*store, kGone, {hurt(2)});
  const std::int64_t number = only_number(*store);
  const LookedAt looked = take_in(*store, number);
  EXPECT_EQ(looked.outcome, Looked::kDone);
  EXPECT_EQ(looked.receipt, 2);
  EXPECT_EQ(looked.player, "Q07");
  EXPECT_TRUE(store->quarantined().value().empty());
  const auto again = backend.open();
  const auto entries = all(*again);
  ASSERT_EQ(entries.size(), 2U);
  EXPECT_EQ(bytes_of(entries[1].entry), bytes_of(hurt(2)));
  EXPECT_EQ(entries[1].device, "phone-2");
  EXPECT_EQ(entries[1].author, "bo");
  EXPECT_EQ(entries[1].role, Role::kRecorder);
  EXPECT_EQ(entries[1].received, kThen) << "when it came";
  const auto decided = again->decided(10).value();
  ASSERT_EQ(decided.size(), 1U);
  EXPECT_EQ(decided[0].number, number);
  EXPECT_EQ(decided[0].receipt, 2);
  EXPECT_EQ(decided[0].by.account, "lee");
  EXPECT_EQ(decided[0].by.when, kNow);
  EXPECT_EQ(take_in(*again, number).outcome, Looked::kNotThere);
  EXPECT_FALSE(again->audit().value().broken_at);
  EXPECT_EQ(take(*again, kGone, {hurt(2)}).front().verdict, Verdict::kKnown) << "the phone sends it again";
  EXPECT_EQ(fold(entries, shipped_kinds()).care.size(), 1U);
}

TEST_P(KeptAside, GoesForGoodAndItsNumberIsNotGivenAgain) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kGone, {hurt(1)});
  const std::int64_t number = only_number(*store);
  EXPECT_EQ(store->drop_kept(number, {"lee", kNow, "mistake"}).value().outcome, Looked::kDone);
  EXPECT_EQ(store->drop_kept(number, {"lee", kNow, "mistake"}).value().outcome, Looked::kNotThere);
  EXPECT_TRUE(store->quarantined().value().empty());
  EXPECT_TRUE(all(*store).empty());
  ASSERT_EQ(store->decided(10).value().size(), 1U);
  EXPECT_EQ(store->decided(10).value()[0].receipt, 0);
  EXPECT_EQ(store->decided(10).value()[0].by.why, "mistake");
  take(*store, kGone, {hurt(2)});
  EXPECT_GT(only_number(*store), number);
}

TEST_P(KeptAside, WhatMustNotBeInTheBooksStaysAside) {
  const Backend backend(GetParam());
  auto store = backend.open();
  const auto outcome_of = [&](const Batch& batch) {
    const auto verdicts = store->take_in(std::vector<Batch>{batch}, shipped_kinds());
    EXPECT_TRUE(verdicts);
    const std::int64_t number = store->quarantined().value().back().number;
    const LookedAt looked = take_in(*store, number);
    EXPECT_EQ(store->quarantined().value().back().number, number) << "it is still there";
    return looked.outcome;
  };
  EXPECT_EQ(outcome_of({kCoach, {}, {{R"({"kind":"hurt"})", "id: expected"}}, kThen}), Looked::kNotAnEntry);
  EXPECT_EQ(outcome_of({kCoach, {{entry(1, "mood-told", R"("player":"Q07")"), "too old"}}, {}, kThen}),
            Looked::kNewerKind);
  const std::string names = R"("player":"Q07","names":[")" + to_text(ledger::test::id_of(9)) + "\"]";
  EXPECT_EQ(outcome_of({kCoach, {{entry(2, "lifted", names), ""}}, {}, kThen}), Looked::kNotTheirs)
      << "a coach's word does not lift, whoever looks at it";
  take(*store, kLead, {consent(3, "given")});
  const Batch record{kLead, {{injury(4), "about a day that has not come"}}, {}, kThen};
  ASSERT_TRUE(store->take_in(std::vector<Batch>{record}, shipped_kinds()));
  take(*store, kLead, {consent(5, "withdrawn")});
  EXPECT_EQ(take_in(*store, store->quarantined().value().back().number).outcome, Looked::kNoConsent);
  EXPECT_EQ(all(*store).size(), 2U) << "the two consents";
  EXPECT_TRUE(store->decided(10).value().empty());
}

TEST_P(KeptAside, OneIdWithOtherContentIsKeptOnceOfEachDevice) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kCoach, {attendance(1, 3)});
  for (int there = 4; there < 9; ++there) {
    const auto verdict = take(*store, kCoach, {attendance(1, there)}).front();
    EXPECT_EQ(verdict.verdict, Verdict::kOtherContent);
    EXPECT_EQ(verdict.receipt, 1);
  }
  const auto aside = store->quarantined().value();
  ASSERT_EQ(aside.size(), 1U) << "whoever makes up more fills nothing";
  EXPECT_EQ(aside[0].bytes, bytes_of(attendance(1, 4)));
  EXPECT_EQ(aside[0].why, "an entry of this id is there and says something else");
  EXPECT_EQ(take_in(*store, aside[0].number).outcome, Looked::kOtherContent);
  EXPECT_EQ(bytes_of(all(*store).front().entry), bytes_of(attendance(1, 3)));
}

TEST_P(KeptAside, ManyAtOnceTakeItInOnce) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kGone, {hurt(1), attendance(2)});
  const auto aside = store->quarantined().value();
  ASSERT_EQ(aside.size(), 2U);
  constexpr int kPeople = 8;
  std::latch ready(kPeople);
  std::atomic<int> done = 0;
  std::atomic<int> faults = 0;
  std::vector<std::thread> threads;
  for (int i = 0; i < kPeople; ++i) {
    threads.emplace_back([&, i] {
      auto own = backend.open();
      ready.arrive_and_wait();
      for (const Quarantined& one : aside) {
        const auto looked = i % 2 == 0 ? own->take_in_kept(one.number, kByLee, shipped_kinds())
                                       : own->drop_kept(one.number, {"lee", kNow, "mistake"});
        if (!looked) ++faults;
        if (looked && looked.value().outcome == Looked::kDone) ++done;
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_EQ(faults, 0);
  EXPECT_EQ(done, 2);
  EXPECT_TRUE(store->quarantined().value().empty());
  const auto decided = store->decided(10).value();
  ASSERT_EQ(decided.size(), 2U);
  std::size_t in = 0;
  for (const Decided& one : decided) in += one.receipt > 0 ? 1 : 0;
  EXPECT_EQ(all(*store).size(), in);
  EXPECT_FALSE(store->audit().value().broken_at);
}

TEST_P(KeptAside, WhatIsAboutAnErasedPersonGoesAndDoesNotComeBack) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kGone, {hurt(1), hurt(2, "Q08")});
  const Batch unread{kGone, {}, {{R"({"kind":"hurt","player":"Q07","place":7})", "place: expected text"}}, kThen};
  ASSERT_TRUE(store->take_in(std::vector<Batch>{unread}, shipped_kinds()));
  ASSERT_EQ(store->quarantined().value().size(), 3U);
  const std::int64_t number = store->quarantined().value().front().number;
  EXPECT_TRUE(store->erase_person("Q07", kNow, test::kNoNote).value()) << "also of whom nothing else is known";
  const auto left = store->quarantined().value();
  ASSERT_EQ(left.size(), 1U);
  EXPECT_NE(left[0].bytes.find("Q08"), std::string::npos);
  EXPECT_EQ(take_in(*store, number).outcome, Looked::kNotThere);
  EXPECT_EQ(take(*store, kGone, {hurt(1)}).front().verdict, Verdict::kErased);
  EXPECT_EQ(store->take_in(std::vector<Batch>{unread}, shipped_kinds()).value()[0][0].verdict, Verdict::kErased);
  EXPECT_EQ(store->quarantined().value().size(), 1U);
}

// The bytes themselves, which a copy of the file from before an erasure would hold.
TEST(KeptAsideBytes, AreGoneFromTheFileWithThePerson) {
  const test::SqliteFile file;
  auto store = file.open();
  take(*store, kGone, {hurt(1)});
  test::Raw raw(file.file());
  const std::string body = raw.values("SELECT hex(body) FROM quarantine").substr(0, 400);
  ASSERT_GT(body.size(), 60U);
  std::string bytes;
  for (std::size_t i = 0; i + 1 < body.size() && body[i] != '|'; i += 2)
    bytes += static_cast<char>(std::stoi(body.substr(i, 2), nullptr, 16));
  const auto lies_there = [&] {
    std::string out;
    for (const char* part : {"", "-wal"}) {
      std::ifstream in(file.file() + part, std::ios::binary);
      out.append(std::istreambuf_iterator<char>(in), {});
    }
    return out.find(bytes) != std::string::npos;
  };
  EXPECT_TRUE(lies_there()) << "nothing was looked at";
  // Under the person's key: the store's own opens none of it.
  const Key key = read_key_file(file.key_file()).value();
  EXPECT_FALSE(opened(key, bytes, "quarantine"));
  ASSERT_TRUE(store->erase_person("Q07", kNow, test::kNoNote).value());
  EXPECT_FALSE(lies_there());
}

}  // namespace
}  // namespace lanework::store
