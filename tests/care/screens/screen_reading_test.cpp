#include "core/care/screens/screen_reading.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/care/screens/screen_measures.h"
#include "tests/care/comma_sheet.h"
#include "tests/care/shipped_screens.h"

namespace lanework::care::screens {
namespace {

using care::test::day;
using test::shipped_tests;
using test::test_named;

std::size_t position(const char* key) {
  return static_cast<std::size_t>(&test_named(key) - shipped_tests().tests.data());
}

ScreenValue value(const char* key, Side side, const char* iso, double mean, int trials = 3) {
  return {"Q01", position(key), side, day(iso), mean, mean, trials};
}

TEST(ScreenChange, TooFewTriesAreNotJudged) {
  const ScreenTest& test = test_named("frontal-plane-angle");
  EXPECT_EQ(judge_change(test, value("frontal-plane-angle", Side::kLeft, "2026-09-01", 20, 2),
                         value("frontal-plane-angle", Side::kLeft, "2026-11-01", 5, 3)),
            ChangeWords::kTooFewTries);
}

// Straight is 0: falling as far outward as it fell inward is no gain.
TEST(ScreenChange, AnAngleIsWantedNearZero) {
  const ScreenTest& test = test_named("frontal-plane-angle");
  const auto at = [](double degrees) { return value("frontal-plane-angle", Side::kLeft, "2026-09-01", degrees); };
  EXPECT_EQ(judge_change(test, at(2), at(-9)), ChangeWords::kWorse);
  EXPECT_EQ(judge_change(test, at(-12), at(-2)), ChangeWords::kBetter);
  EXPECT_EQ(judge_change(test, at(5), at(-3)), ChangeWords::kWithin);
}

TEST(ScreenChange, WithoutAPublishedFigureNothingIsJudged) {
  EXPECT_EQ(judge_change(test_named("plank-hold"), value("plank-hold", Side::kBoth, "2026-09-01", 20),
                         value("plank-hold", Side::kBoth, "2026-11-01", 200)),
            ChangeWords::kNotJudged);
}

TEST(ScreenReading, SinceTheLastDayAndSinceTheFirst) {
  const std::vector<ScreenReading> found =
      read_screens(shipped_tests(), {value("frontal-plane-angle", Side::kLeft, "2026-03-01", 20),
                                     value("frontal-plane-angle", Side::kLeft, "2026-06-01", 14),
                                     value("frontal-plane-angle", Side::kLeft, "2026-09-01", 9)});
  ASSERT_EQ(found.size(), 1U);
  const SideReading& side = found[0].tests[0].sides[0];
  EXPECT_EQ(side.since_last, ChangeWords::kWithin);
  EXPECT_EQ(side.since_first, ChangeWords::kBetter);
}

TEST(ScreenReading, SymmetryOfTheLastDayWithBothSides) {
  const std::vector<ScreenReading> found =
      read_screens(shipped_tests(), {value("hop-for-distance", Side::kLeft, "2026-06-01", 118),
                                     value("hop-for-distance", Side::kLeft, "2026-09-01", 100),
                                     value("hop-for-distance", Side::kRight, "2026-06-01", 130)});
  const auto& symmetry = found[0].tests[0].symmetry;
  ASSERT_TRUE(symmetry);
  EXPECT_EQ(symmetry->date, day("2026-06-01"));
  EXPECT_NEAR(symmetry->percent, 90.77, 0.01);
  EXPECT_FALSE(symmetry->prompt);
}

TEST(ScreenReading, TimedIsTheOtherWayRound) {
  const std::vector<ScreenReading> found = read_screens(
      shipped_tests(),
      {value("timed-hop", Side::kLeft, "2026-06-01", 2.31), value("timed-hop", Side::kRight, "2026-06-01", 2.0)});
  EXPECT_NEAR(found[0].tests[0].symmetry->percent, 86.58, 0.01);
  EXPECT_TRUE(found[0].tests[0].symmetry->prompt);
}

TEST(ScreenReading, AnAngleHasNoSymmetry) {
  const std::vector<ScreenReading> found =
      read_screens(shipped_tests(), {value("frontal-plane-angle", Side::kLeft, "2026-06-01", 12),
                                     value("frontal-plane-angle", Side::kRight, "2026-06-01", 3)});
  EXPECT_FALSE(found[0].tests[0].symmetry);
}

TEST(ScreenMeasures, SymmetryNeverPasses100AndSwapsWithTheSides) {
  EXPECT_TRUE(rc::check([] {
    const double left = *rc::gen::inRange(1, 500) / 10.0;
    const double right = *rc::gen::inRange(1, 500) / 10.0;
    for (const Wanted wanted : {Wanted::kMore, Wanted::kLess}) {
      const double percent = weaker_side_percent(left, right, wanted);
      RC_ASSERT(percent <= 100 && percent > 0);
      RC_ASSERT(percent == weaker_side_percent(right, left, wanted));
    }
  }));
}

TEST(ScreenMeasures, TheTwoConventionsTurnIntoEachOther) {
  EXPECT_TRUE(rc::check([] {
    const double angle = *rc::gen::inRange(0, 1801) / 10.0;
    RC_ASSERT(std::abs(flexion_from_included(included_from_flexion(angle)) - angle) < 1e-9);
  }));
}

}  // namespace
}  // namespace lanework::care::screens
