#include "core/findings/taught_coaches.h"

#include <gtest/gtest.h>

#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

using records::Setting;
using records::WarmUp;

// Twelve weeks of two trainings; a squad's warm-ups a week before and from week 'from' on: 0, 1 or 2.
void add_squad(records::Season& season, std::optional<Date> taught, int before, int from, int after,
               WarmUp how = WarmUp::kMost) {
  const auto number = static_cast<std::uint32_t>(season.squads.size());
  season.squads.push_back(squad("s" + std::to_string(number), "", "U13"));
  season.squads.back().taught = taught;
  for (int week = 0; week < 12; ++week) {
    for (int evening = 0; evening < 2; ++evening) {
      const bool warmed = evening < (week < from ? before : after);
      const Date on{season.period.first.days_since_epoch + 7 * week + 1 + 2 * evening};
      season.exposures.push_back(session(number, on, Setting::kTraining, 10, warmed ? how : WarmUp::kNo));
    }
  }
}

records::Season season_of_twelve_weeks() {
  records::Season season;
  season.period = {day(3, 2), day(5, 24), day(5, 24)};
  return season;
}

std::optional<TaughtCoaches> found(const records::Season& season) {
  return taught_coaches(season, records::hours_by_week(season), 0.95);
}

TEST(TaughtCoaches, BesideThoseWithoutADay) {
  records::Season season = season_of_twelve_weeks();
  const Date sixth_monday{day(3, 2).days_since_epoch + 35};
  add_squad(season, sixth_monday, 1, 5, 2);
  add_squad(season, sixth_monday, 0, 5, 2);
  add_squad(season, day(3, 2), 0, 0, 1);
  add_squad(season, std::nullopt, 1, 0, 1);
  add_squad(season, std::nullopt, 0, 0, 0);
  const auto taught = found(season);
  ASSERT_TRUE(taught);
  EXPECT_EQ(taught->taught.squads, 3);
  EXPECT_NEAR(taught->taught.warm_ups_a_week, 5.0 / 3, 1e-12);
  EXPECT_EQ(taught->not_taught.squads, 2);
  EXPECT_NEAR(taught->not_taught.warm_ups_a_week, 0.5, 1e-12);
  ASSERT_TRUE(taught->a_week);
  EXPECT_NEAR(taught->a_week->difference, 7.0 / 6, 1e-12);
  // Variances 1/3 / 3 and 1/2 / 2: Welch's degrees are (13/36)^2 / (1/162 + 1/16).
  EXPECT_NEAR(taught->a_week->degrees, (13.0 / 36) * (13.0 / 36) / (1.0 / 162 + 1.0 / 16), 1e-9);
  EXPECT_EQ(taught->squads_both, 2);
  EXPECT_NEAR(taught->before, 0.5, 1e-12);
  EXPECT_NEAR(taught->after, 2, 1e-12);
  ASSERT_TRUE(taught->change);
  EXPECT_NEAR(taught->change->difference, 1.5, 1e-12);
  // The squad that did none has no share of those in which most took part.
  EXPECT_EQ(taught->not_taught.squads_with_fidelity, 1);
}

TEST(TaughtCoaches, TheWeekOfTeachingIsNeitherBeforeNorAfter) {
  records::Season season = season_of_twelve_weeks();
  // A Wednesday in the fifth week, the only one with warm-ups.
  add_squad(season, Date{day(3, 2).days_since_epoch + 30}, 0, 12, 0);
  season.exposures[8].warm_up = season.exposures[9].warm_up = WarmUp::kMost;
  const auto taught = found(season);
  EXPECT_EQ(taught->squads_both, 1);
  EXPECT_EQ(taught->before, 0);
  EXPECT_EQ(taught->after, 0);
  EXPECT_FALSE(taught->change);
}

TEST(TaughtCoaches, HowManyTookPart) {
  records::Season season = season_of_twelve_weeks();
  add_squad(season, day(3, 2), 2, 0, 2, WarmUp::kMost);
  add_squad(season, day(3, 2), 2, 0, 2, WarmUp::kHalf);
  const auto taught = found(season);
  EXPECT_EQ(taught->taught.squads_with_fidelity, 2);
  EXPECT_NEAR(taught->taught.most_did, 0.5, 1e-12);
}

TEST(TaughtCoaches, NothingWithoutADayOfTeaching) {
  records::Season season = season_of_twelve_weeks();
  add_squad(season, std::nullopt, 1, 0, 1);
  EXPECT_FALSE(found(season));
}

// Taught after the season: all its weeks were without.
TEST(TaughtCoaches, ADayToCome) {
  records::Season season = season_of_twelve_weeks();
  add_squad(season, day(8, 1), 1, 0, 1);
  EXPECT_EQ(found(season)->not_taught.squads, 1);
  EXPECT_EQ(found(season)->taught.squads, 0);
}

}  // namespace
}  // namespace lanework::findings
