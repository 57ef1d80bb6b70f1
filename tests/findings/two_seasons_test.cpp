#include "core/findings/two_seasons.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/evidence/poisson_limits.h"
#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

using records::Season;
using records::Setting;

// So many injuries in so many hours of one setting, in a year's March.
void add(Season& season, std::uint32_t squad, Setting setting, int injuries, double hours) {
  records::Exposure exposure = session(squad, season.period.first, setting, 0, std::nullopt);
  exposure.hours = records::PlayerMinutes(std::llround(60 * hours));
  season.exposures.push_back(exposure);
  for (int i = 0; i < injuries; ++i) {
    season.injuries.push_back(injury(squad, season.period.first, season.period.last));
    season.injuries.back().setting = setting;
  }
}

Season empty_season(int year) {
  Season season;
  season.period = {make_date(year, 3, 2).value(), make_date(year, 3, 29).value(), make_date(year, 3, 29).value()};
  return season;
}

TwoSeasons found(const Season& before, const Season& after) { return two_seasons(before, after, record_terms(), 0.95); }

// Rosenbaum 2009 (tests/published/rosenbaum_2009_test.cpp): the second game as the season before, the first as after.
TEST(TwoSeasons, APublishedTableThroughRecords) {
  Season before = empty_season(2025);
  Season after = empty_season(2026);
  before.squads = after.squads = {squad("boys", "", "boys"), squad("girls", "", "girls")};
  add(after, 0, Setting::kMatch, 18, 2141.4);
  add(after, 1, Setting::kMatch, 21, 3326.0);
  add(before, 0, Setting::kMatch, 8, 1438.7);
  add(before, 1, Setting::kMatch, 21, 2233.0);
  const TwoSeasons seasons = found(before, after);
  ASSERT_TRUE(seasons.like_with_like.ratio);
  EXPECT_NEAR(seasons.like_with_like.ratio->estimate, 0.90313253, 1e-8);
  EXPECT_NEAR(seasons.like_with_like.ratio->limits.low, 0.55852447, 1e-8);
  EXPECT_NEAR(seasons.like_with_like.ratio->limits.high, 1.46036281, 1e-8);
  EXPECT_NEAR(seasons.whole.ratio, (39 / 5467.4) / (29 / 3671.7), 1e-12);
  ASSERT_EQ(seasons.ages.size(), 2);
  EXPECT_NEAR(seasons.ages[0].ratio, 1.51, 0.005);
  EXPECT_NEAR(seasons.ages[1].ratio, 0.671, 0.0005);
  // Squads and strata are the same here.
  EXPECT_EQ(seasons.squads_in_both, 2);
  EXPECT_NEAR(seasons.within_squads.ratio->estimate, seasons.like_with_like.ratio->estimate, 1e-12);
  ASSERT_TRUE(seasons.standardised);
  const double hours = 1438.7 + 2233.0;
  EXPECT_NEAR(seasons.standardised->after.rate, 18 / 2141.4 * 1438.7 / hours + 21 / 3326.0 * 2233.0 / hours, 1e-12);
  EXPECT_NEAR(seasons.standardised->before, 29 / hours, 1e-12);
  EXPECT_NEAR(seasons.standardised->share_of_hours, 1, 1e-12);
}

TEST(TwoSeasons, TheSameAgainIsNoDifference) {
  Season before = empty_season(2025);
  for (std::uint32_t number = 0; number < 5; ++number) {
    before.squads.push_back(squad("s" + std::to_string(number), "", number % 2 == 0 ? "U13" : "U15"));
    add(before, number, Setting::kTraining, 2 + static_cast<int>(number), 800);
    add(before, number, Setting::kMatch, 3, 200);
  }
  Season after = before;
  after.period = empty_season(2026).period;
  const int later = days_between(before.period.first, after.period.first);
  for (records::Exposure& exposure : after.exposures) exposure.date.days_since_epoch += later;
  for (records::InjuryRecord& one : after.injuries) one.date.days_since_epoch += later;
  const TwoSeasons seasons = found(before, after);
  EXPECT_NEAR(seasons.like_with_like.ratio->estimate, 1, 1e-12);
  EXPECT_EQ(seasons.like_with_like.strata, 4);
  EXPECT_NEAR(seasons.like_with_like.difference->estimate, 0, 1e-15);
  EXPECT_NEAR(seasons.standardised->after.rate, seasons.standardised->before, 1e-15);
  // Every squad is like itself: leaving one out moves nothing.
  ASSERT_TRUE(seasons.within_squads.ratio_by_squads);
  EXPECT_NEAR(seasons.within_squads.ratio_by_squads->error, 0, 1e-12);
  EXPECT_EQ(seasons.within_squads.strata, 10);
}

TEST(TwoSeasons, SquadsComeAndGo) {
  Season before = empty_season(2025);
  Season after = empty_season(2026);
  before.squads = {squad("old", "", "U13"), squad("both", "", "U11")};
  after.squads = {squad("both", "", "U12"), squad("new", "", "U13")};
  add(before, 0, Setting::kTraining, 4, 500);
  add(before, 1, Setting::kTraining, 2, 500);
  add(after, 0, Setting::kTraining, 3, 400);
  add(after, 1, Setting::kTraining, 1, 400);
  const TwoSeasons seasons = found(before, after);
  EXPECT_EQ(seasons.squads_in_both, 1);
  EXPECT_EQ(seasons.squads_before_only, 1);
  EXPECT_EQ(seasons.squads_after_only, 1);
  // Alike are the U13 alone; the squad that is in both has grown out of its band.
  EXPECT_EQ(seasons.like_with_like.strata, 1);
  EXPECT_EQ(seasons.like_with_like.hours_outside, 900);
  EXPECT_NEAR(seasons.like_with_like.ratio->estimate, (1.0 / 400) / (4.0 / 500), 1e-12);
  EXPECT_NEAR(seasons.within_squads.ratio->estimate, (3.0 / 400) / (2.0 / 500), 1e-12);
  EXPECT_NEAR(seasons.standardised->share_of_hours, 0.5, 1e-12);
  ASSERT_EQ(seasons.ages.size(), 3);
  EXPECT_EQ(seasons.ages[0].label, "U11");
  EXPECT_FALSE(seasons.ages[0].has_hours());
}

// A season of more matches has more injuries; like with like, none.
TEST(TwoSeasons, MakeUpIsHeldAlike) {
  Season before = empty_season(2025);
  Season after = empty_season(2026);
  before.squads = after.squads = {squad("a", "", "U13")};
  add(before, 0, Setting::kTraining, 8, 4000);
  add(before, 0, Setting::kMatch, 10, 1000);
  add(after, 0, Setting::kTraining, 4, 2000);
  add(after, 0, Setting::kMatch, 30, 3000);
  const TwoSeasons seasons = found(before, after);
  EXPECT_NEAR(seasons.whole.ratio, 34.0 / 18, 1e-12);
  EXPECT_NEAR(seasons.like_with_like.ratio->estimate, 1, 1e-12);
  EXPECT_NEAR(seasons.standardised->after.rate, 18.0 / 5000, 1e-12);
}

}  // namespace
}  // namespace lanework::findings
