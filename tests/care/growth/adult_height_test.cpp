#include "core/care/growth/adult_height.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using test::a_player;
using test::day;
using test::shipped_table;

const BodyMeasurement kMeasured{day("2026-11-26"), 158, {}, 47, 1};

TEST(AdultHeight, OfTheWorkedBoyWithItsError) {
  const AdultHeightAnswer answer = adult_height(shipped_table(), a_player(), kMeasured);
  ASSERT_TRUE(answer.height);
  EXPECT_NEAR(answer.height->cm, 180.11, 0.05);
  EXPECT_NEAR(answer.height->reached_percent, 87.72, 0.05);
  EXPECT_NEAR(answer.height->high_cm - answer.height->low_cm, 10.6, 1e-9);
  EXPECT_FALSE(answer.height->floored_at_height);
}

TEST(AdultHeight, RefusedWhereSomethingIsNotKnown) {
  GrowthPerson person = a_player({});
  EXPECT_EQ(adult_height(shipped_table(), person, kMeasured).why, WhyNoAdultHeight::kNoSex);
  person = a_player();
  person.father_cm = {};
  EXPECT_EQ(adult_height(shipped_table(), person, kMeasured).why, WhyNoAdultHeight::kNoParents);
  BodyMeasurement no_mass = kMeasured;
  no_mass.mass_kg = {};
  EXPECT_EQ(adult_height(shipped_table(), a_player(), no_mass).why, WhyNoAdultHeight::kNoMass);
  person = a_player();
  person.born = {};
  EXPECT_EQ(adult_height(shipped_table(), person, kMeasured).why, WhyNoAdultHeight::kNoBirth);
}

TEST(AdultHeight, RefusedOutsideTheRows) {
  GrowthPerson person = a_player();
  person.born = day("2018-12-10");  // 7.96 years
  EXPECT_EQ(adult_height(shipped_table(), person, kMeasured).why, WhyNoAdultHeight::kAgeOutside);
  person.born = day("2018-11-20");  // 8.02 years
  EXPECT_TRUE(adult_height(shipped_table(), person, kMeasured).height);
  person.born = day("2009-05-01");  // 17.57 years
  EXPECT_EQ(adult_height(shipped_table(), person, kMeasured).why, WhyNoAdultHeight::kAgeOutside);
}

TEST(AdultHeight, FlooredAtTodaysHeightAndSaidSo) {
  GrowthPerson person = a_player();
  person.born = day("2009-11-26");
  person.mother_cm = 150;
  person.father_cm = 160;
  const BodyMeasurement tall{day("2026-11-26"), 185, {}, 70, 1};
  const AdultHeightAnswer answer = adult_height(shipped_table(), person, tall);
  ASSERT_TRUE(answer.height);
  EXPECT_TRUE(answer.height->floored_at_height);
  EXPECT_EQ(answer.height->cm, 185);
  EXPECT_EQ(answer.height->reached_percent, 100);
  EXPECT_GE(answer.height->low_cm, 185);
}

TEST(AdultHeight, BetweenTwoRowsItLiesBetweenThem) {
  EXPECT_TRUE(rc::check([] {
    const double row = *rc::gen::inRange(16, 35) / 2.0;
    const double share = *rc::gen::inRange(0, 101) / 100.0;
    const Sex sex = *rc::gen::element(Sex::kBoy, Sex::kGirl);
    const double height = *rc::gen::inRange(120, 190);
    const double mass = *rc::gen::inRange(25, 80);
    const auto at = [&](double age) { return khamis_roche_cm(shipped_table(), sex, age, height, mass, 172); };
    const double from = at(row);
    const double to = at(row + 0.5 > 17.5 ? row : row + 0.5);
    const double found = at(std::min(17.5, row + 0.5 * share));
    RC_ASSERT(found >= std::min(from, to) - 1e-9);
    RC_ASSERT(found <= std::max(from, to) + 1e-9);
  }));
}

TEST(AdultHeight, NeverBelowTodaysHeight) {
  EXPECT_TRUE(rc::check([] {
    GrowthPerson person = a_player(*rc::gen::element(Sex::kBoy, Sex::kGirl));
    person.mother_cm = *rc::gen::inRange(140, 190);
    person.father_cm = *rc::gen::inRange(150, 210);
    const double height = *rc::gen::inRange(116, 203);
    const BodyMeasurement measured{day("2026-11-26"), height, {}, *rc::gen::inRange(21, 130) * 1.0, 1};
    const AdultHeightAnswer answer = adult_height(shipped_table(), person, measured);
    RC_ASSERT(answer.height->cm >= height);
    RC_ASSERT(answer.height->reached_percent <= 100);
    RC_ASSERT(answer.height->low_cm <= answer.height->cm);
    RC_ASSERT(answer.height->cm <= answer.height->high_cm);
  }));
}

}  // namespace
}  // namespace lanework::care::growth
