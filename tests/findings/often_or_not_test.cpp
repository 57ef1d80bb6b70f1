#include "core/findings/often_or_not.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

using records::Setting;
using records::WarmUp;

// Four squads of one age, four weeks of two trainings of 10 h: 'a' warms up at both, 'b' and 'd' at one, 'c' at both
// for two weeks and then no more: lately 2, 2, 4/3, 1.
records::Season four_squads() {
  records::Season season;
  season.period = {day(3, 2), day(3, 29), day(4, 12)};
  season.squads = {squad("a", "", "U13"), squad("b", "", "U13"), squad("c", "", "U13"), squad("d", "", "U13")};
  for (std::uint32_t number = 0; number < 4; ++number) {
    for (int week = 0; week < 4; ++week) {
      for (int evening = 0; evening < 2; ++evening) {
        const bool warmed = number == 0 || (number == 2 ? week < 2 : evening == 0);
        const Date on{day(3, 2).days_since_epoch + 7 * week + 1 + 2 * evening};
        season.exposures.push_back(session(number, on, Setting::kTraining, 10, warmed ? WarmUp::kMost : WarmUp::kNo));
      }
    }
  }
  const auto hurt = [&](std::uint32_t number, int week) {
    const Date on{day(3, 2).days_since_epoch + 7 * week + 1};
    season.injuries.push_back(injury(number, on, Date{on.days_since_epoch + 5}));
  };
  hurt(0, 1);
  hurt(1, 0);
  hurt(1, 2);
  hurt(1, 3);
  hurt(2, 0);
  hurt(2, 3);
  hurt(2, 3);
  hurt(3, 2);
  return season;
}

OftenOrNot found(const records::Season& season) { return often_or_not(season, records::hours_by_week(season), 0.95); }

TEST(OftenOrNot, WeeksGoByWhatWasDoneLately) {
  const OftenOrNot often = found(four_squads());
  EXPECT_EQ(often.weeks_often, 6);
  EXPECT_EQ(often.weeks_seldom, 10);
  EXPECT_EQ(often.weeks_unknown, 0);
  EXPECT_EQ(often.compared.one.events, 2);
  EXPECT_EQ(often.compared.one.hours, 120);
  EXPECT_EQ(often.compared.other.events, 6);
  EXPECT_EQ(often.compared.other.hours, 200);
  EXPECT_EQ(often.events_left_out, 0);
  EXPECT_NEAR(often.compared.ratio->estimate, (2.0 / 120) / (6.0 / 200), 1e-12);
}

TEST(OftenOrNot, SquadsSeasonsForOneFewer) {
  const OftenOrNot often = found(four_squads());
  EXPECT_EQ(often.hours_a_squad_season, 80);
  ASSERT_TRUE(often.needed);
  // 0.03 - 0.016667 an hour, in 80 hours.
  EXPECT_NEAR(*often.needed->estimate, 1 / ((0.03 - 2.0 / 120) * 80), 1e-9);
  EXPECT_TRUE(often.needed->through_infinity);
}

TEST(OftenOrNot, SquadsWholeInOneArmAreCountedAsSquads) {
  records::Season season = four_squads();
  OftenOrNot often = found(season);
  EXPECT_EQ(often.whole_squads.often, 1);
  EXPECT_EQ(often.whole_squads.seldom, 2);
  EXPECT_FALSE(often.whole_squads.ratio);
  for (records::Exposure& exposure : season.exposures)
    if (exposure.squad == 2) exposure.warm_up = WarmUp::kMost;
  often = found(season);
  EXPECT_EQ(often.whole_squads.often, 2);
  ASSERT_TRUE(often.whole_squads.ratio);
  EXPECT_NEAR(often.whole_squads.ratio->ratio, 1, 1e-12);  // 4 in 160 h each
}

TEST(OftenOrNot, WhatNobodyKnowsIsLeftOutAndCounted) {
  records::Season season = four_squads();
  for (records::Exposure& exposure : season.exposures)
    if (exposure.squad == 1) exposure.warm_up.reset();
  const OftenOrNot often = found(season);
  EXPECT_EQ(often.weeks_unknown, 4);
  EXPECT_EQ(often.events_left_out, 3);
  EXPECT_EQ(often.compared.other.events, 3);
}

TEST(OftenOrNot, StrataAreOfAgesAloneWhereSettingsAreNotKnown) {
  records::Season season = four_squads();
  EXPECT_TRUE(found(season).by_setting);
  season.injuries.front().setting.reset();
  EXPECT_FALSE(found(season).by_setting);  // one of eight
  EXPECT_EQ(found(season).compared.one.events, 2);
}

}  // namespace
}  // namespace lanework::findings
