#include "core/findings/reach.h"

#include <gtest/gtest.h>

#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

Reach reach() {
  const records::Season season = small_season();
  return reach_of_warm_ups(season, records::hours_by_week(season));
}

TEST(Reach, CountsSessionsByHowManyDidIt) {
  const Reach found = reach();
  ASSERT_EQ(found.squads.size(), 3);
  EXPECT_EQ(found.squads[0].sessions, (std::array<int, 5>{1, 1, 0, 1, 1}));
  EXPECT_EQ(found.squads[1].sessions, (std::array<int, 5>{1, 0, 1, 0, 0}));
  EXPECT_EQ(found.reached(), 2);
}

TEST(Reach, WarmUpsAWeekAreOfWeeksOfWhichSomethingIsKnown) {
  const Reach found = reach();
  // 1.5 of two sessions of three in the first week, none in the last; 1.2 in the one week of the other.
  EXPECT_EQ(found.squads[0].weeks_known, 2);
  EXPECT_DOUBLE_EQ(*found.squads[0].warm_ups_a_week, 1.125);
  EXPECT_DOUBLE_EQ(*found.squads[0].first_half, 2.25);
  EXPECT_DOUBLE_EQ(*found.squads[0].second_half, 0);
  EXPECT_DOUBLE_EQ(*found.squads[1].warm_ups_a_week, 1.2);
  EXPECT_TRUE(found.squads[0].taken_up());
  EXPECT_TRUE(found.squads[1].taken_up());
  EXPECT_EQ(found.squads[2].weeks_with_sessions, 0);
  EXPECT_FALSE(found.squads[2].warm_ups_a_week);
}

TEST(Reach, LatelyIsTheMeanOfWeeksOfWhichSomethingIsKnown) {
  const records::Season season = small_season();
  const records::WeekTable weeks = records::hours_by_week(season);
  // 1.5 of two known sessions, the third thought to be like them: 2.25; then nothing until a week with none.
  EXPECT_DOUBLE_EQ(*warm_ups_in_week(weeks, 0, 0), 2.25);
  EXPECT_FALSE(warm_ups_in_week(weeks, 0, 1));
  EXPECT_DOUBLE_EQ(*warm_ups_lately(weeks, 0, 1), 2.25);
  EXPECT_DOUBLE_EQ(*warm_ups_lately(weeks, 0, 3), 1.125);
  EXPECT_FALSE(warm_ups_lately(weeks, 2, 3));
}

// U9 has one squad; of the two of U13 nothing is known of one.
TEST(Reach, AgeBandsYoungestFirst) {
  const Reach found = reach();
  ASSERT_EQ(found.ages.size(), 2);
  EXPECT_EQ(found.ages[0].age_band, "U9");
  EXPECT_EQ(found.ages[0].squads, 1);
  EXPECT_EQ(found.ages[0].sessions, 3);
  EXPECT_EQ(found.ages[1].squads, 2);
  EXPECT_EQ(found.ages[1].reached, 1);
  EXPECT_EQ(found.ages[1].most_did_it, 1);
  EXPECT_DOUBLE_EQ(*found.ages[1].warm_ups_a_week, 1.2);
}

TEST(Reach, DrillsMostOftenNamedFirst) {
  const Reach found = reach();
  ASSERT_EQ(found.drills.size(), 3);
  EXPECT_EQ(found.drills[0].drill, "squat");
  EXPECT_EQ(found.drills[0].left_out, 2);
  EXPECT_EQ(found.drills[1].needing_help + found.drills[2].needing_help, 1);
}

}  // namespace
}  // namespace lanework::findings
