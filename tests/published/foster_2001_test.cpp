// Foster, Florhaug, Franklin, et al. 2001, J Strength Cond Res 15(1):109-15: monotony is the daily mean over its
// deviation, strain the week's load times that. Worked by hand with both deviations; ours is the sample's.
#include <gtest/gtest.h>

#include "core/care/load/week_load.h"

namespace lanework::care::load {
namespace {

constexpr std::array<double, kDaysAWeek> kWeek = {0, 360, 270, 0, 450, 180, 540};

TEST(Foster2001, TheWorkedWeek) {
  const WeekLoad week = week_load(kWeek);
  EXPECT_EQ(week.total, 1800);
  EXPECT_NEAR(week.daily_mean, 257.14, 0.005);
  EXPECT_NEAR(week.deviation, 210.61, 0.005);
  EXPECT_NEAR(*week.monotony, 1.221, 0.001);
  EXPECT_NEAR(*week.strain, 2198, 0.5);
}

TEST(Foster2001, TheSameWeekWithTheDeviationOfAPopulation) {
  const WeekLoad week = week_load(kWeek, Spread::kPopulation);
  EXPECT_NEAR(week.deviation, 194.99, 0.005);
  EXPECT_NEAR(*week.monotony, 1.319, 0.001);
  EXPECT_NEAR(*week.strain, 2374, 0.5);
}

TEST(Foster2001, AWeekOfYouth) {
  const WeekLoad week = week_load({0, 240, 0, 315, 0, 210, 420});
  EXPECT_EQ(week.total, 1185);
  EXPECT_NEAR(*week.monotony, 0.986, 0.001);
  EXPECT_NEAR(*week.strain, 1169, 0.5);
}

TEST(Foster2001, EffortTimesMinutes) { EXPECT_EQ(session_load(6, 75), 450); }

}  // namespace
}  // namespace lanework::care::load
