#include "core/care/growth/plausible.h"

#include <gtest/gtest.h>

#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using test::day;
using test::height_on;
using test::shipped_table;

std::string hint_of(const BodyMeasurement& measured, std::optional<int> age = 13) {
  const std::vector<Implausible> found = implausible_in(shipped_table(), measured, age);
  return found.size() == 1 ? found[0].hint : std::to_string(found.size()) + " found";
}

BodyMeasurement body(double height, std::optional<double> sitting = {}, std::optional<double> mass = {}) {
  return {day("2026-11-26"), height, sitting, mass, 3};
}

TEST(Plausible, AUsualMeasurementIs) {
  EXPECT_TRUE(implausible_in(shipped_table(), body(158, 81, 47), 13).empty());
  EXPECT_TRUE(implausible_in(shipped_table(), body(158, 81, 47), {}).empty());
}

TEST(Plausible, SlipsOfTheUnit) {
  EXPECT_EQ(hint_of(body(1.58)), "this seems to be in metres");
  EXPECT_EQ(hint_of(body(62.2)), "this seems to be in inches");
  EXPECT_EQ(hint_of(body(1580)), "this seems to be in millimetres");
  EXPECT_EQ(hint_of(body(158, 0.81)), "this seems to be in metres");
  EXPECT_EQ(hint_of(body(158, 31.9)), "this seems to be in inches");
  EXPECT_EQ(hint_of(body(158, 81, 47'000)), "this seems to be in grams");
  EXPECT_EQ(hint_of(body(158, 81, 200)), "this seems to be in pounds");
}

TEST(Plausible, SittingHeightIsAShareOfHeight) {
  EXPECT_EQ(hint_of(body(158, 126)), "was the height of the seat taken off?");
  EXPECT_EQ(implausible_in(shipped_table(), body(158, 65), 13).size(), 1U);
}

TEST(Plausible, ByAge) {
  EXPECT_TRUE(implausible_in(shipped_table(), body(190), 15).empty());
  const std::vector<Implausible> found = implausible_in(shipped_table(), body(190), 9);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].expected, "a height from 100 to 168 cm at age 9");
  EXPECT_TRUE(implausible_in(shipped_table(), body(190), {}).empty());
}

TEST(Plausible, NobodyShrinksByMoreThanTheError) {
  const BodyMeasurement before = height_on("2026-08-01", 158);
  EXPECT_FALSE(implausible_after(shipped_table(), before, height_on("2026-11-26", 157)));
  EXPECT_TRUE(implausible_after(shipped_table(), before, height_on("2026-11-26", 156.9)));
}

TEST(Plausible, NobodyShootsUp) {
  const BodyMeasurement before = height_on("2025-11-26", 140);
  EXPECT_FALSE(implausible_after(shipped_table(), before, height_on("2026-11-26", 155)));
  EXPECT_TRUE(implausible_after(shipped_table(), before, height_on("2026-11-26", 156.1)));
}

}  // namespace
}  // namespace lanework::care::growth
