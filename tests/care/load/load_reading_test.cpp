#include "core/care/load/load_reading.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/care/load/weighted_mean.h"
#include "tests/care/comma_sheet.h"

namespace lanework::care::load {
namespace {

using care::test::day;

const Date kMonday = day("2026-11-02");

SessionEffort on_day(int days_after_monday, int minutes, double effort, std::optional<int> age = {}) {
  return {"Q01", Date{kMonday.days_since_epoch + days_after_monday}, "", minutes, effort, age, 0};
}

TEST(LoadReading, WeeksFromMondayAndOnlyWholeOnesHaveAMonotony) {
  const LoadReading found =
      read_load({on_day(0, 60, 5), on_day(2, 60, 4), on_day(8, 60, 5)}, Date{kMonday.days_since_epoch + 9});
  ASSERT_EQ(found.weeks.size(), 2U);
  EXPECT_EQ(found.weeks[0].monday, kMonday);
  EXPECT_TRUE(found.weeks[0].whole);
  EXPECT_EQ(found.weeks[0].load.total, 540);
  EXPECT_EQ(found.weeks[0].rest_days, 5);
  EXPECT_TRUE(found.weeks[0].load.monotony);
  EXPECT_FALSE(found.weeks[1].whole);
  EXPECT_FALSE(found.weeks[1].load.monotony);
  EXPECT_EQ(found.weeks[1].load.total, 300);
}

TEST(LoadReading, AFirstWeekThatBeganBeforeTheRowsIsNotWhole) {
  const LoadReading found = read_load({on_day(2, 60, 5)}, Date{kMonday.days_since_epoch + 13});
  ASSERT_EQ(found.weeks.size(), 2U);
  EXPECT_FALSE(found.weeks[0].whole);
  EXPECT_TRUE(found.weeks[1].whole);
  EXPECT_FALSE(found.weeks[1].load.monotony);  // nothing at all: every day is alike
}

TEST(LoadReading, Prompts) {
  std::vector<SessionEffort> hard;
  for (int i = 0; i < 6; ++i) hard.push_back(on_day(i, 130, 5, 12));
  const LoadReading found = read_load(hard, Date{kMonday.days_since_epoch + 6});
  EXPECT_TRUE(found.weeks[0].more_hours_than_years);  // 13 hours at 12
  EXPECT_TRUE(found.weeks[0].little_rest);            // one day
  for (SessionEffort& one : hard) one.age = {};
  EXPECT_FALSE(read_load(hard, Date{kMonday.days_since_epoch + 6}).weeks[0].more_hours_than_years);
}

TEST(LoadReading, MeansFromTheEighthDayOnAndSettledAfter28) {
  EXPECT_FALSE(read_load({on_day(0, 60, 5)}, Date{kMonday.days_since_epoch + 6}).means);
  const auto early = read_load({on_day(0, 70, 5)}, Date{kMonday.days_since_epoch + 7}).means;
  ASSERT_TRUE(early);
  EXPECT_EQ(early->seed, 50);
  EXPECT_NEAR(early->short_mean, 37.5, 1e-9);
  EXPECT_FALSE(early->settled);
  EXPECT_EQ(early->settled_from, Date{kMonday.days_since_epoch + 28});
  EXPECT_TRUE(read_load({on_day(0, 70, 5)}, Date{kMonday.days_since_epoch + 28}).means->settled);
}

TEST(LoadReading, AWeekWithoutARowIsSaid) {
  EXPECT_FALSE(read_load({on_day(0, 60, 5)}, Date{kMonday.days_since_epoch + 6}).silent);
  EXPECT_TRUE(read_load({on_day(0, 60, 5)}, Date{kMonday.days_since_epoch + 7}).silent);
}

TEST(LoadReading, TotalsOfTheWeeksAreTheSessions) {
  EXPECT_TRUE(rc::check([] {
    std::vector<SessionEffort> sessions;
    int at = *rc::gen::inRange(0, 7);
    double all = 0;
    for (int i = *rc::gen::inRange(1, 30); i > 0; --i, at += *rc::gen::inRange(0, 5)) {
      sessions.push_back(on_day(at, *rc::gen::inRange(1, 200), *rc::gen::inRange(0, 11)));
      all += session_load(sessions.back().effort, sessions.back().minutes);
    }
    const LoadReading found = read_load(sessions, Date{kMonday.days_since_epoch + at + *rc::gen::inRange(0, 20)});
    double sum = 0;
    for (const PlayerWeek& week : found.weeks) sum += week.load.total;
    RC_ASSERT(std::abs(sum - all) < 1e-6);
  }));
}

TEST(LoadReading, PlayersEachByThemselves) {
  Sessions sessions;
  sessions.sessions = {on_day(0, 60, 5), on_day(1, 60, 5), on_day(0, 30, 5)};
  sessions.sessions[2].player = "Q02";
  const std::vector<LoadReading> found = read_loads(sessions, Date{kMonday.days_since_epoch + 6});
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].weeks[0].load.total, 600);
  EXPECT_EQ(found[1].player, "Q02");
}

}  // namespace
}  // namespace lanework::care::load
