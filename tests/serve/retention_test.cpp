#include "app/serve/retention.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "app/store/statements.h"
#include "tests/ledger/shipped_kinds.h"
#include "tests/serve/house_of_test.h"

namespace lanework::serve {
namespace {

std::vector<std::string> noted;  // tags on the list of the erased

Result<Forgotten> forgotten(test::HouseOfTest& house, int days_on, const Keeping& keeping = {}) {
  const store::ErasureNote note = [](const std::string& tag, const std::string&) {
    noted.push_back(tag);
    return std::optional<Fault>();
  };
  return forget_what_is_past(house.room(), now_at(house.now + days_on * 86'400), keeping, note);
}

ledger::Entry entry(int n, const std::string& kind, const std::string& fields) {
  return ledger::test::read(ledger::test::entry_text(n, kind, fields, n)).value();
}

std::string bytes_of_file(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

TEST(Retention, GoesByTheClockAndDoneTwiceDoesNothingMore) {
  test::HouseOfTest house;
  const std::string coach = house.account(ledger::Role::kCoach);
  static_cast<void>(house.session(coach));
  static_cast<void>(house.device(coach));  // its link was confirmed
  ASSERT_TRUE(house.room().gate->note_failure("address/192.0.2.1", house.now));
  const store::Batch odd{
      {"d-1", coach, ledger::Role::kCoach, false}, {}, {{"{}", "id: expected a UUID"}}, now_at(house.now).stamp};
  ASSERT_TRUE(house.room().store->take_in(std::vector<store::Batch>{odd}, house.house().kinds));

  const auto at_once = forgotten(house, 0);
  ASSERT_TRUE(at_once);
  EXPECT_EQ(at_once.value().of_signing_in + at_once.value().kept_aside, 0);

  const auto two_days_on = forgotten(house, 2);
  ASSERT_TRUE(two_days_on);
  EXPECT_EQ(two_days_on.value().of_signing_in, 3) << "a session, a link, a failure";
  EXPECT_EQ(two_days_on.value().kept_aside, 0);
  EXPECT_EQ(house.room().gate->devices().value().size(), 1U) << "the device stays paired";

  const auto later = forgotten(house, 32);
  ASSERT_TRUE(later);
  EXPECT_EQ(later.value().kept_aside, 1);
  const auto again = forgotten(house, 32);
  ASSERT_TRUE(again);
  EXPECT_EQ(again.value().of_signing_in + again.value().kept_aside, 0);
}

// The checklist's: the clock three years forward, the job runs, rows and keys are gone, and it writes counts only.
TEST(Retention, ThreeYearsOnRowsAndKeysAreGone) {
  test::HouseOfTest house;
  noted.clear();
  const std::string lee = house.account(ledger::Role::kLead);
  const store::Sender lead{"desk-1", lee, ledger::Role::kLead, false};
  const auto take = [&](const std::vector<ledger::Entry>& entries, const std::string& received) {
    ASSERT_TRUE(house.room().store->take_in(lead, entries, house.house().kinds, received));
  };
  take({entry(1, "wrap-up",
              R"("squad":"u13","day":"2026-11-26","start":"18:00","happened":"held","note":"canary-evening")"),
        entry(2, "hurt", R"("player":"Q99","place":"knee")"), entry(3, "hurt", R"("player":"Q07","place":"hip")")},
       now_at(house.now).stamp);
  take({entry(4, "session-started", R"("squad":"u13","day":"2029-11-20","start":"18:00")")},
       now_at(house.now + 1090 * 86'400).stamp);
  ASSERT_TRUE(house.room().gate->note_read({0, house.now, lee, "", "GET squad", "u13", "Q07", 1, {}}));
  ASSERT_TRUE(house.room().gate->note_read({0, house.now + 1090 * 86'400, lee, "", "GET squad", "u13", "Q07", 1, {}}));

  ASSERT_TRUE(forgotten(house, 729));
  EXPECT_EQ(house.room().store->entries_after(0, 9, house.house().kinds).value().size(), 4U);
  const auto two_years_on = forgotten(house, 731);
  ASSERT_TRUE(two_years_on);
  EXPECT_EQ(two_years_on.value().entries, 1) << "the evening";
  EXPECT_EQ(two_years_on.value().people, 0);
  const auto later = forgotten(house, 1100);
  ASSERT_TRUE(later);
  EXPECT_EQ(later.value().people, 1) << "Q99 is on no list";
  EXPECT_EQ(later.value().entries, 1);
  EXPECT_EQ(later.value().read_notes, 1);
  EXPECT_EQ(noted.size(), 1U);

  const auto rows = store::open_sqlite_statements(house.file());
  ASSERT_TRUE(rows);
  const auto whole = [&](const std::string& statement) {
    return store::whole_in(rows.value()->run(statement, {}).value().rows.at(0).at(0));
  };
  EXPECT_EQ(whole("SELECT sum(length(body)) FROM entry WHERE receipt IN (1, 2)"), 0);
  EXPECT_EQ(whole("SELECT count(*) FROM person WHERE sealed_key IS NULL"), 1);
  EXPECT_EQ(whole("SELECT count(*) FROM read_note"), 1);
  for (const char* part : {"", "-wal"}) {
    EXPECT_EQ(bytes_of_file(house.file() + part).find("canary-evening"), std::string::npos) << part;
  }
  EXPECT_NE(bytes_of_file(house.file()).find("desk-1"), std::string::npos) << "nothing was looked at";
  EXPECT_FALSE(house.room().store->audit().value().broken_at);
  EXPECT_FALSE(house.room().gate->audit_reads().value().broken_at);
  EXPECT_EQ(house.room().store->entries_about("Q07", house.house().kinds).value().size(), 1U) << "on the lists";
  const auto again = forgotten(house, 1100);
  ASSERT_TRUE(again);
  EXPECT_EQ(again.value().people + again.value().entries + again.value().read_notes, 0);
}

// What the desk is told goes next goes on that day and not on the one before.
TEST(Retention, WhatIsToldToGoNextGoesOnThatDay) {
  test::HouseOfTest house;
  const std::string lee = house.account(ledger::Role::kLead);
  const store::Sender lead{"desk-1", lee, ledger::Role::kLead, false};
  const auto started = [&](int n) {
    return entry(n, "session-started", R"("squad":"u13","day":"2026-11-26","start":"18:00")");
  };
  ASSERT_TRUE(house.room().store->take_in(lead, {started(1), started(2), entry(3, "hurt", R"("player":"Q99")")},
                                          house.house().kinds, now_at(house.now).stamp));
  ASSERT_TRUE(house.room().gate->note_read({0, house.now, lee, "", "GET squad", "u13", "Q07", 1, {}}));
  ASSERT_TRUE(house.room().gate->note_read({0, house.now + 1, lee, "", "GET squad", "u13", "Q07", 1, {}}));
  auto next = what_goes_next(house.room().past().value()->ages().value(), {});
  EXPECT_EQ(std::erase_if(next, [](const Ahead& one) { return !one.next_day; }), 2U) << "kept aside, plans";
  std::sort(next.begin(), next.end(), [](const Ahead& a, const Ahead& b) { return *a.next_day < *b.next_day; });
  ASSERT_EQ(next.size(), 3U);
  for (const Ahead& one : next) {
    const std::string what = one.what;
    const int days = days_between(day_of(house.now), *one.next_day);
    EXPECT_TRUE(days == one.keeps_days || days == one.keeps_days + 1) << what << ' ' << days;
    const auto before = forgotten(house, days - 1);
    ASSERT_TRUE(before);
    EXPECT_EQ(before.value().entries + before.value().people + before.value().read_notes, 0) << what;
    house.now += 60;  // a moment after the one that counts
    const auto on_the_day = forgotten(house, days);
    house.now -= 60;
    ASSERT_TRUE(on_the_day);
    const std::int64_t gone = what == "evenings"          ? on_the_day.value().entries
                              : what == "people-who-left" ? on_the_day.value().people
                                                          : on_the_day.value().read_notes;
    EXPECT_EQ(gone, one.would_go) << what;
  }
}

// A phone that was lost and found sends what went: the clock's rule keeps it aside, and that goes after 30 days.
TEST(Retention, WhatWentAndIsSentAgainIsKeptAside) {
  test::HouseOfTest house;
  house.now += 86'400;
  const std::string phone = house.device(house.account(ledger::Role::kCoach, {{"u13", "2026-01-01", "", false}}));
  const auto body = [&](int n) {
    return R"({"client":1,"after":0,"most":0,"entries":[)" +
           ledger::test::entry_text(n, "session-started", ledger::test::about_session(), n) + "]}";
  };
  EXPECT_NE(house.ask("POST", "/api/sync", body(1), "", phone).body.find("\"stored\""), std::string::npos);
  EXPECT_NE(house.ask("POST", "/api/sync", body(2), "", phone).body.find("\"stored\""), std::string::npos);
  house.now += 800 * 86'400;
  const auto gone = forgotten(house, 0);
  ASSERT_TRUE(gone);
  EXPECT_EQ(gone.value().entries, 1);
  const Response again = house.ask("POST", "/api/sync", body(1), "", phone);
  EXPECT_EQ(again.body.find("\"stored\""), std::string::npos) << again.body;
  EXPECT_EQ(house.room().store->quarantined().value().size(), 1U);
  // A lead may enter what is old. It goes again within the hour.
  const std::string desk = house.device(house.account(ledger::Role::kLead));
  EXPECT_NE(house.ask("POST", "/api/sync", body(1), "", desk).body.find("\"stored\""), std::string::npos);
  EXPECT_EQ(forgotten(house, 0).value().entries, 1) << "the one that was the newest until now";
}

TEST(Retention, TheCaretakerLooksAtOnceAndEndsWhenItIsTold) {
  test::HouseOfTest house;
  static_cast<void>(house.session(house.account(ledger::Role::kCoach)));
  house.now += 2 * 86'400;
  { const Caretaker caretaker(house.house(), {}); }
  ASSERT_EQ(house.log().size(), 1U);
  EXPECT_NE(house.log()[0].find("\"forgotten\""), std::string::npos) << house.log()[0];
}

}  // namespace
}  // namespace lanework::serve
