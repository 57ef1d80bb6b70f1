#include "core/care/growth/maturity.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using test::a_player;
using test::day;

const BodyMeasurement kWhole{day("2026-11-26"), 158, 81, 47, 1};
const BodyMeasurement kHeightOnly{day("2026-11-26"), 158, {}, {}, 1};

TEST(Offsets, WhatWasMeasuredDecides) {
  EXPECT_EQ(offsets(a_player(Sex::kBoy), kWhole).size(), 3U);
  EXPECT_EQ(offsets(a_player(Sex::kGirl), kWhole).size(), 2U);
  EXPECT_EQ(offsets(a_player(Sex::kBoy), kHeightOnly).size(), 1U);
  EXPECT_EQ(offsets(a_player(Sex::kGirl), kHeightOnly).size(), 1U);
}

TEST(Offsets, WithoutASexBothAreShown) {
  const std::vector<OffsetEstimate> both = offsets(a_player({}), kWhole);
  EXPECT_EQ(both.size(), 5U);
  const OffsetBand wide = offset_band(both);
  for (const Sex sex : {Sex::kBoy, Sex::kGirl}) {
    const OffsetBand one = offset_band(offsets(a_player(sex), kWhole));
    EXPECT_LE(wide.low, one.low);
    EXPECT_GE(wide.high, one.high);
  }
}

TEST(Offsets, NoneWithoutABirthDateOrOutsideTheAges) {
  GrowthPerson person = a_player();
  person.born = day("2019-11-27");  // 7 years
  EXPECT_TRUE(offsets(person, kHeightOnly).empty());
  person.born = day("2007-11-01");  // 19 years
  EXPECT_TRUE(offsets(person, kHeightOnly).empty());
  person.born = {};
  EXPECT_TRUE(offsets(person, kHeightOnly).empty());
}

TEST(Offsets, TheBandIsNeverNarrowerThanAYearEitherWay) {
  const OffsetBand band = offset_band(offsets(a_player(), kHeightOnly));
  EXPECT_NEAR(band.high - band.low, 2, 1e-9);
}

TEST(Offsets, OutsideTheBestAgesItSaysSo) {
  EXPECT_FALSE(offsets(a_player(Sex::kBoy), kWhole).front().outside_best_ages);
  GrowthPerson girl = a_player(Sex::kGirl);
  EXPECT_FALSE(offsets(girl, kWhole).front().outside_best_ages);  // 13.0
  girl.born = day("2013-10-01");
  EXPECT_TRUE(offsets(girl, kWhole).front().outside_best_ages);
}

TEST(Offsets, ErrorsOfTheNewerEquationsAreBorrowed) {
  for (const OffsetEstimate& one : offsets(a_player(), kWhole))
    EXPECT_EQ(one.error_is_borrowed, one.equation != OffsetEquation::kMirwald2002);
}

// A year on in age, or a longer trunk, never puts a player further before the spurt.
TEST(Offsets, RiseWithAgeAndSittingHeight) {
  EXPECT_TRUE(rc::check([] {
    const double age = *rc::gen::inRange(80, 170) / 10.0;
    const double height = *rc::gen::inRange(1200, 1950) / 10.0;
    const double share = *rc::gen::inRange(470, 560) / 1000.0;
    const double sitting = height * share;
    const double mass = *rc::gen::inRange(15, 26) * height * height / 10000.0;
    const double later = age + *rc::gen::inRange(1, 10) / 10.0;
    for (const Sex sex : {Sex::kBoy, Sex::kGirl}) {
      RC_ASSERT(mirwald_2002_offset(sex, later, height, sitting, mass) >
                mirwald_2002_offset(sex, age, height, sitting, mass));
      RC_ASSERT(mirwald_2002_offset(sex, age, height, sitting + 1, mass) >
                mirwald_2002_offset(sex, age, height, sitting, mass));
      RC_ASSERT(moore_2015_stature_offset(sex, later, height) > moore_2015_stature_offset(sex, age, height));
      RC_ASSERT(moore_2015_stature_offset(sex, age, height + 1) > moore_2015_stature_offset(sex, age, height));
    }
    RC_ASSERT(moore_2015_boys_sitting_offset(later, sitting) > moore_2015_boys_sitting_offset(age, sitting));
  }));
}

}  // namespace
}  // namespace lanework::care::growth
