// What every store keeps, whatever lies behind it: one suite, run on each.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/ledger/canonical.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/store/backend.h"

namespace lanework::store {
namespace {

using ledger::Role;
using ledger::test::about_session;
using ledger::test::entry_text;
using ledger::test::shipped_kinds;
using test::Backend;

const std::string kNow = "2026-11-26T18:05:00+01:00";
const Sender kCoach{"phone-1", "ann", Role::kCoach, false};
const Sender kLead{"desk-1", "lee", Role::kLead, false};

ledger::Entry entry(int n, const std::string& kind, const std::string& fields) {
  return ledger::test::read(entry_text(n, kind, fields, n)).value();
}
ledger::Entry started(int n) { return entry(n, "session-started", about_session()); }
ledger::Entry hurt(int n, const std::string& player = "Q07") {
  return entry(n, "hurt", "\"player\":\"" + player + "\",\"place\":\"knee\"");
}

std::vector<EntryVerdict> take(Store& store, const Sender& sender, const std::vector<ledger::Entry>& entries) {
  const auto verdicts = store.take_in(sender, entries, shipped_kinds(), kNow);
  if (!verdicts) throw std::runtime_error(to_line(verdicts.faults().front()));
  return verdicts.value();
}

std::vector<ledger::Received> all(Store& store) { return store.entries_after(0, 100'000, shipped_kinds()).value(); }

std::string state_of(Store& store) {
  return ledger::canonical_json(to_node(ledger::fold(all(store), shipped_kinds()))).value();
}

class Contract : public testing::TestWithParam<const char*> {};

INSTANTIATE_TEST_SUITE_P(Stores, Contract, testing::Values("SQLite", "PostgreSQL"),
                         [](const auto& one) { return std::string(one.param); });

TEST_P(Contract, WhatIsTakenInIsHandedOutAsItCame) {
  const Backend backend(GetParam());
  auto store = backend.open();
  const auto verdicts = take(*store, kCoach, {started(1), hurt(2)});
  ASSERT_EQ(verdicts.size(), 2U);
  EXPECT_EQ(verdicts[0].verdict, Verdict::kStored);
  EXPECT_EQ(verdicts[1].receipt, 2);
  const auto again = backend.open();
  const auto entries = all(*again);
  ASSERT_EQ(entries.size(), 2U);
  EXPECT_EQ(bytes_of(entries[1].entry), bytes_of(hurt(2)));
  EXPECT_EQ(entries[1].author, "ann");
  EXPECT_EQ(entries[1].received, kNow);
  EXPECT_EQ(entries[1].role, Role::kCoach);
  EXPECT_EQ(again->entries_after(1, 10, shipped_kinds()).value().size(), 1U);
  EXPECT_EQ(again->entries_after(0, 1, shipped_kinds()).value().front().receipt, 1);
}

TEST_P(Contract, ABatchSentTenTimesIsThereOnce) {
  const Backend backend(GetParam());
  auto store = backend.open();
  const std::vector<ledger::Entry> batch = {started(1), hurt(2)};
  take(*store, kCoach, batch);
  const std::string state = state_of(*store);
  for (int i = 0; i < 9; ++i) {
    for (const EntryVerdict& verdict : take(*store, kCoach, batch)) EXPECT_EQ(verdict.verdict, Verdict::kKnown);
  }
  EXPECT_EQ(state_of(*store), state);
  EXPECT_EQ(store->audit().value().entries, 2);
}

TEST_P(Contract, OneIdWithOtherContentKeepsTheFirst) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kCoach, {hurt(1)});
  const auto verdict = take(*store, kCoach, {hurt(1, "Q08")}).front();
  EXPECT_EQ(verdict.verdict, Verdict::kOtherContent);
  EXPECT_EQ(verdict.receipt, 1);
  EXPECT_EQ(bytes_of(all(*store).front().entry), bytes_of(hurt(1)));
}

TEST_P(Contract, WhatARoleDoesNotEnterAndWhatARevokedDeviceSendsIsKeptAside) {
  const Backend backend(GetParam());
  auto store = backend.open();
  const auto lifted = entry(1, "lifted", "\"player\":\"Q07\",\"names\":[\"" + to_text(ledger::test::id_of(9)) + "\"]");
  Sender gone = kCoach;
  gone.revoked = true;
  EXPECT_EQ(take(*store, kCoach, {started(2), lifted})[1].verdict, Verdict::kQuarantined);
  EXPECT_EQ(take(*store, gone, {started(3)}).front().why, "the device was revoked");
  EXPECT_EQ(take(*store, kLead, {lifted}).front().verdict, Verdict::kStored);
  EXPECT_EQ(all(*store).size(), 2U);
  const auto aside = store->quarantined().value();
  ASSERT_EQ(aside.size(), 2U);
  EXPECT_EQ(aside[0].why, "a coach does not enter lifted");
  EXPECT_EQ(aside[0].bytes, bytes_of(lifted));
  EXPECT_EQ(aside[1].bytes, bytes_of(started(3)));
}

ledger::Entry consent(int n, const std::string& answer, const std::string& player = "Q07") {
  return entry(n, "consent",
               "\"player\":\"" + player +
                   R"(","purpose":"injury-record","by":"guardian","day":"2026-09-01","answer":")" + answer + "\"");
}
ledger::Entry injury(int n, const std::string& player = "Q07") {
  return entry(n, "injury-opened", "\"player\":\"" + player + R"(","squad":"u13","day":"2026-11-26","note":"canary")");
}

std::vector<Verdict> verdicts_of(Store& store, const std::vector<ledger::Entry>& entries) {
  std::vector<Verdict> out;
  for (const EntryVerdict& verdict : take(store, kLead, entries)) out.push_back(verdict.verdict);
  return out;
}

TEST_P(Contract, ARecordIsTakenInOnlyWithConsentAndTheRestOfTheBatchIs) {
  const Backend backend(GetParam());
  auto store = backend.open();
  const auto verdicts = take(*store, kLead, {started(1), injury(2), hurt(3)});
  EXPECT_EQ(verdicts[0].verdict, Verdict::kStored);
  EXPECT_EQ(verdicts[1].verdict, Verdict::kNoConsent);
  EXPECT_NE(verdicts[1].why.find("no consent"), std::string::npos);
  EXPECT_EQ(verdicts[2].verdict, Verdict::kStored) << "what the coach must know tonight waits for nothing";
  EXPECT_EQ(all(*store).size(), 2U);
  EXPECT_TRUE(store->quarantined().value().empty()) << "nothing of it is kept";
  Sender gone = kLead;
  gone.revoked = true;
  EXPECT_EQ(take(*store, gone, {injury(2)}).front().verdict, Verdict::kNoConsent);
  const Batch unread{kLead,
                     {},
                     {{R"({"kind":"injury-opened","player":"Q07","note":"canary"})", "id: expected"},
                      {R"({"kind":"injury-opened","note":"canary"})", "id: expected"},
                      {R"({"kind":"hurt","player":"Q07"})", "id: expected"}},
                     kNow};
  const auto odd = store->take_in(std::vector<Batch>{unread}, shipped_kinds()).value().front();
  ASSERT_EQ(odd.size(), 3U);
  EXPECT_EQ(odd[0].verdict, Verdict::kNoConsent);
  EXPECT_EQ(odd[1].verdict, Verdict::kNoConsent);
  EXPECT_EQ(odd[2].verdict, Verdict::kQuarantined);
  EXPECT_EQ(store->quarantined().value().size(), 1U);
}

TEST_P(Contract, AConsentCountsFromItsPlaceInTheBatchAndAWithdrawalToo) {
  const Backend backend(GetParam());
  auto store = backend.open();
  using V = Verdict;
  EXPECT_EQ(verdicts_of(*store, {injury(1), consent(2, "given"), injury(3), injury(4, "Q08"), consent(5, "withdrawn"),
                                 injury(6)}),
            (std::vector<V>{V::kNoConsent, V::kStored, V::kStored, V::kNoConsent, V::kStored, V::kNoConsent}));
  EXPECT_EQ(verdicts_of(*store, {injury(3)}), std::vector<V>{V::kKnown}) << "it is on the disk, and the phone may know";
  EXPECT_EQ(verdicts_of(*store, {injury(6)}), std::vector<V>{V::kNoConsent});
  const auto again = backend.open();
  EXPECT_EQ(verdicts_of(*again, {consent(7, "given"), injury(6)}), (std::vector<V>{V::kStored, V::kStored}));
  EXPECT_TRUE(again->erase_person("Q07", kNow, test::kNoNote).value());
  EXPECT_EQ(verdicts_of(*again, {injury(8)}), std::vector<V>{V::kErased});
}

TEST_P(Contract, AnErasedPersonCannotBeReadNorEnteredAgain) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kCoach, {hurt(1), started(2), hurt(3, "Q08")});
  EXPECT_FALSE(store->erase_person("Q99", kNow, test::kNoNote).value());
  EXPECT_TRUE(store->erase_person("Q07", kNow, test::kNoNote).value());
  EXPECT_FALSE(store->erase_person("Q07", kNow, test::kNoNote).value());
  const auto again = backend.open();
  EXPECT_EQ(all(*again).size(), 2U);
  EXPECT_EQ(take(*again, kCoach, {hurt(1)}).front().verdict, Verdict::kErased);
  EXPECT_EQ(take(*again, kCoach, {hurt(4)}).front().verdict, Verdict::kErased);
  const Audit audit = again->audit().value();
  EXPECT_EQ(audit.entries, 3);
  EXPECT_EQ(audit.unreadable, 1);
  EXPECT_FALSE(audit.broken_at) << "the chain goes over what is sealed, so erasing breaks no link";
}

TEST_P(Contract, AKindOfANewerVersionIsKeptAndSealedWhereItNamesAPlayer) {
  const Backend backend(GetParam());
  auto store = backend.open();
  take(*store, kCoach,
       {entry(1, "mood-told", R"("player":"Q07","how":"tired")"), entry(2, "weather-felt", R"("how":"damp")")});
  EXPECT_EQ(all(*store).size(), 2U);
  EXPECT_TRUE(store->erase_person("Q07", kNow, test::kNoNote).value());
  EXPECT_EQ(all(*store).size(), 1U);
}

TEST_P(Contract, SeveralSendersInOneTransactionEachGetTheirVerdicts) {
  const Backend backend(GetParam());
  auto store = backend.open();
  const Batch first{
      kCoach, {{started(1), ""}, {hurt(2), "about another squad"}}, {{"{\"kind\":1}", "kind: expected text"}}, kNow};
  const Batch second{kLead, {{hurt(3), ""}, {started(1), ""}}, {}, kNow};
  const auto verdicts = store->take_in(std::vector<Batch>{first, second}, shipped_kinds());
  ASSERT_TRUE(verdicts);
  ASSERT_EQ(verdicts.value().size(), 2U);
  EXPECT_EQ(verdicts.value()[0][0].verdict, Verdict::kStored);
  EXPECT_EQ(verdicts.value()[0][1].verdict, Verdict::kQuarantined);
  EXPECT_EQ(verdicts.value()[0][1].why, "about another squad");
  EXPECT_EQ(verdicts.value()[1][0].receipt, 2);
  EXPECT_EQ(verdicts.value()[1][1].verdict, Verdict::kKnown);
  EXPECT_EQ(all(*store).size(), 2U);
  ASSERT_EQ(store->quarantined().value().size(), 2U);
  EXPECT_EQ(store->quarantined().value()[1].bytes, "{\"kind\":1}");
  // Sent again, since the answer was lost: kept aside once.
  ASSERT_TRUE(store->take_in(std::vector<Batch>{first}, shipped_kinds()));
  EXPECT_EQ(store->quarantined().value().size(), 2U);
}

TEST_P(Contract, WhatWasKeptAsideGoesAfterItsTimeAndNotBefore) {
  const Backend backend(GetParam());
  auto store = backend.open();
  const auto day = [](const char* text) { return *parse_iso_date(text); };
  for (const char* received : {"2026-10-26T23:59:00+01:00", "2026-10-27T00:01:00+01:00"}) {
    const Batch batch{kCoach, {}, {{std::string("{\"at\":\"") + received + "\"}", "kind: expected text"}}, received};
    ASSERT_TRUE(store->take_in(std::vector<Batch>{batch}, shipped_kinds()));
  }
  EXPECT_EQ(store->forget_kept_aside(day("2026-10-26")).value(), 0);
  EXPECT_EQ(store->forget_kept_aside(day("2026-10-27")).value(), 1);
  ASSERT_EQ(store->quarantined().value().size(), 1U);
  EXPECT_EQ(store->quarantined().value()[0].received, "2026-10-27T00:01:00+01:00");
  EXPECT_EQ(store->forget_kept_aside(day("2026-10-27")).value(), 0) << "done twice it does nothing more";
}

TEST_P(Contract, ADaysEntriesAreFoundByTheDayAndAPersonsByThePerson) {
  const Backend backend(GetParam());
  auto store = backend.open();
  std::vector<ledger::Entry> batch;
  for (int n = 1; n <= 5; ++n) {
    batch.push_back(
        entry(n, "session-started", R"("squad":"u13","day":"2026-11-2)" + std::to_string(n) + R"(","start":"18:00")"));
  }
  batch.push_back(hurt(6, "Q07"));
  batch.push_back(hurt(7, "Q08"));
  take(*store, kLead, batch);
  const auto day = [](const char* text) { return *parse_iso_date(text); };
  const auto some = store->entries_of_days(day("2026-11-22"), day("2026-11-24"), shipped_kinds()).value();
  ASSERT_EQ(some.size(), 3U);
  EXPECT_EQ(some.front().receipt, 2);
  EXPECT_TRUE(store->entries_of_days(day("2027-01-01"), day("2027-01-07"), shipped_kinds()).value().empty());
  const auto about = store->entries_about("Q08", shipped_kinds()).value();
  ASSERT_EQ(about.size(), 1U);
  EXPECT_EQ(bytes_of(about[0].entry), bytes_of(hurt(7, "Q08")));
  EXPECT_TRUE(store->entries_about("Q99", shipped_kinds()).value().empty());
  ASSERT_TRUE(store->erase_person("Q08", kNow, test::kNoNote).value());
  EXPECT_TRUE(store->entries_about("Q08", shipped_kinds()).value().empty());
}

TEST_P(Contract, WhatARoleEnteredAboutNobodyIsFoundByTheRole) {
  const Backend backend(GetParam());
  auto store = backend.open();
  EXPECT_EQ(store->latest_receipt().value(), 0);
  const std::string lesson = R"("coach":"Tolly","day":"2026-11-21","what":"landing")";
  take(*store, kLead, {entry(1, "coach-taught", lesson), hurt(2, "Q07")});
  take(*store, kCoach, {entry(3, "session-started", R"("squad":"u13","day":"2026-11-21","start":"18:00")")});
  take(*store, kLead, {entry(4, "coach-taught", lesson)});
  const auto by_lead = store->entries_by_role(ledger::Role::kLead, shipped_kinds()).value();
  ASSERT_EQ(by_lead.size(), 2U) << "without what is about a player, and without a coach's";
  EXPECT_EQ(by_lead[0].receipt, 1);
  EXPECT_EQ(by_lead[1].receipt, 4);
  EXPECT_EQ(bytes_of(by_lead[0].entry), bytes_of(entry(1, "coach-taught", lesson)));
  EXPECT_EQ(store->entries_by_role(ledger::Role::kCoach, shipped_kinds()).value().size(), 1U);
  EXPECT_EQ(store->latest_receipt().value(), 4);
  EXPECT_TRUE(store->entries_by_role(ledger::Role::kBoard, shipped_kinds()).value().empty());
}

// A store of its own each time: a file, or a club in one database.
TEST_P(Contract, ManyBatchesInAnyOrderAndAgainGiveOneState) {
  const Backend backend(GetParam());
  int clubs = 0;
  EXPECT_TRUE(rc::check([&] {
    if (test::is_left_to_sqlite(++clubs, backend)) return;
    std::vector<ledger::Entry> entries;
    const int count = *rc::gen::inRange(1, 20);
    for (int n = 1; n <= count; ++n) entries.push_back(*rc::gen::arbitrary<bool>() ? started(n) : hurt(n));
    auto store = backend.open("club " + std::to_string(clubs));
    std::size_t sent = 0;
    while (sent < entries.size()) {
      const auto size = static_cast<std::size_t>(*rc::gen::inRange(1, 6));
      const std::size_t from = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(sent) + 1));
      const std::size_t to = std::min(entries.size(), std::max(sent + 1, from + size));
      take(*store, kCoach,
           {entries.begin() + static_cast<std::ptrdiff_t>(from), entries.begin() + static_cast<std::ptrdiff_t>(to)});
      sent = std::max(sent, to);
    }
    const auto there = all(*store);
    RC_ASSERT(there.size() == entries.size());
    for (std::size_t i = 0; i < there.size(); ++i) RC_ASSERT(there[i].receipt == static_cast<std::int64_t>(i) + 1);
    RC_ASSERT(!store->audit().value().broken_at);
  }));
}

}  // namespace
}  // namespace lanework::store
