// What was entered about sessions, as a plan goes on from it.
#include "core/loop/sessions_so_far.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "tests/club/sample_club.h"
#include "tests/ledger/shipped_kinds.h"

namespace lanework::loop {
namespace {

using club::DidIt;
using club::Happened;
using club::test::at;
using club::test::day;
using session::Weekday;

constexpr int kWeeks = 3;
const WasPlanned kAnything = [](std::size_t, Date, TimeOfDay, const std::string&) { return true; };

// Squad 'u13' on Thursdays at 18:00 for 20 minutes, from Monday 23 November 2026.
club::Club one_squad() {
  club::Club out = club::test::empty_club();
  out.settings.block_from = club::test::monday();
  out.settings.block_weeks = kWeeks;
  club::test::add_squad(out, "u13", {club::test::slot(Weekday::kThursday, "18:00", 20, "pitch", 2)});
  return out;
}

using Said = std::pair<std::string, std::string>;

ledger::State state_of(const std::vector<Said>& entries) {
  std::vector<ledger::Received> all;
  int n = 0;
  for (const auto& [kind, fields] : entries) {
    ++n;
    all.push_back(ledger::test::received(n, ledger::test::read(ledger::test::entry_text(n, kind, fields, n)).value(),
                                         "phone", "ann", ledger::Role::kLead));
  }
  return ledger::fold(std::move(all), ledger::test::shipped_kinds());
}

SessionsSoFar so_far(const std::vector<Said>& entries, const WasPlanned& was_planned = kAnything,
                     const std::string& today = "2026-11-27") {
  const club::Club club = one_squad();
  return sessions_so_far(state_of(entries), club, club::allocate(club, club.settings.block_from, kWeeks), day(today),
                         was_planned);
}

std::string about(const std::string& date, const std::string& start, const std::string& more) {
  return R"("squad":"u13","day":")" + date + R"(","start":")" + start + "\"," + more;
}
std::string thursday(const std::string& more) { return about("2026-11-26", "18:00", more); }

TEST(SessionsSoFar, AWrapUpIsARow) {
  const auto out = so_far({{"drill-marked", thursday(R"("drill":"squat","mark":"skipped")")},
                           {"drill-marked", thursday(R"("drill":"plank","mark":"needs-help")")},
                           {"wrap-up", thursday(R"("happened":"cut-short","did_it":"half","minutes":12)")}});
  ASSERT_EQ(out.rows.size(), 1U);
  const club::SessionRow& row = out.rows.front();
  EXPECT_EQ(row.squad, 0U);
  EXPECT_EQ(row.date, day("2026-11-26"));
  EXPECT_EQ(row.start, at("18:00"));
  EXPECT_EQ(row.happened, Happened::kCutShort);
  EXPECT_EQ(row.did_it, DidIt::kHalf);
  EXPECT_EQ(row.minutes, 12);
  EXPECT_EQ(row.left_out, (std::vector<std::string>{"squat"}));
  EXPECT_TRUE(out.passed_over.empty());
}

TEST(SessionsSoFar, WhatNobodyWrappedUpIsNoRow) {
  EXPECT_TRUE(so_far({{"session-started", thursday(R"("plan":"x")")}}).rows.empty());
}

TEST(SessionsSoFar, HeldWithNobodyDoingItWasMissed) {
  const auto out = so_far({{"wrap-up", thursday(R"("happened":"held","did_it":"nobody","minutes":9)")}});
  EXPECT_EQ(out.rows.front().happened, Happened::kMissed);
  EXPECT_FALSE(out.rows.front().minutes);
}

TEST(SessionsSoFar, MoreMinutesThanTheSlotHasAreThoseOfTheSlotAndNoneAreNotKnown) {
  EXPECT_EQ(so_far({{"wrap-up", thursday(R"("happened":"held","minutes":45)")}}).rows.front().minutes, 20);
  EXPECT_FALSE(so_far({{"wrap-up", thursday(R"("happened":"held","minutes":0)")}}).rows.front().minutes);
}

TEST(SessionsSoFar, ADrillThatWasNotPlannedIsToldAndNotLeftOut) {
  const auto out = so_far({{"drill-marked", thursday(R"("drill":"squat","mark":"skipped")")},
                           {"wrap-up", thursday(R"("happened":"held")")}},
                          [](std::size_t, Date, TimeOfDay, const std::string&) { return false; });
  EXPECT_TRUE(out.rows.front().left_out.empty());
  EXPECT_EQ(out.passed_over,
            (std::vector<std::string>{"u13 on 2026-11-26 at 18:00: squat was left out, but was not planned."}));
}

TEST(SessionsSoFar, AnEveningThatNoCalendarHasIsToldAndChangesNothing) {
  const auto out = so_far({{"wrap-up", about("2026-11-26", "19:30", R"("happened":"held")")}});
  EXPECT_TRUE(out.rows.empty());
  EXPECT_EQ(
      out.passed_over,
      (std::vector<std::string>{"u13 on 2026-11-26 at 19:30 is in no calendar of this block: it changes no plan."}));
}

TEST(SessionsSoFar, WhatIsStillToComeWaits) {
  const auto out = so_far({{"wrap-up", about("2026-12-03", "18:00", R"("happened":"held")")}});
  EXPECT_TRUE(out.rows.empty());
  EXPECT_EQ(out.passed_over.size(), 1U);
}

TEST(SessionsSoFar, OtherBlocksAndOtherClubsSquadsAreNoMatterHere) {
  const auto out = so_far({{"wrap-up", about("2026-10-01", "18:00", R"("happened":"held")")},
                           {"wrap-up", about("2027-01-07", "18:00", R"("happened":"held")")},
                           {"wrap-up", R"("squad":"elsewhere","day":"2026-11-26","start":"18:00","happened":"held")"}});
  EXPECT_TRUE(out.rows.empty());
  EXPECT_TRUE(out.passed_over.empty());
}

// Whatever is entered: each row is a slot of the calendar that is over, once, with minutes that the slot has.
RC_GTEST_PROP(SessionsSoFarProperty, EveryRowFitsTheCalendar, ()) {
  std::vector<Said> said;
  const int count = *rc::gen::inRange(0, 30);
  for (int i = 0; i < count; ++i) {
    const int offset = *rc::gen::inRange(-10, 30);
    const std::string date = to_iso(Date{club::test::monday().days_since_epoch + offset});
    const std::string start = *rc::gen::element<std::string>("18:00", "18:05");
    const std::string happened = *rc::gen::element<std::string>("held", "cut-short", "missed");
    const int minutes = *rc::gen::inRange(0, 1441);
    said.emplace_back("wrap-up",
                      about(date, start, "\"happened\":\"" + happened + "\",\"minutes\":" + std::to_string(minutes)));
  }
  const auto out = so_far(said);
  std::set<std::pair<int, std::string>> seen;
  for (const club::SessionRow& row : out.rows) {
    RC_ASSERT(weekday_name(row.date) == std::string("Thursday"));
    RC_ASSERT(row.date <= day("2026-11-27"));
    RC_ASSERT(to_text(row.start) == "18:00");
    RC_ASSERT(!row.minutes || (*row.minutes >= 1 && *row.minutes <= 20));
    RC_ASSERT(seen.emplace(row.date.days_since_epoch, to_text(row.start)).second);
  }
}

}  // namespace
}  // namespace lanework::loop
