#include "core/care/growth/height_velocity.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using test::day;
using test::height_on;
using test::shipped_table;

TEST(HeightVelocity, NoneWithin90DaysAndTheNextIsSaid) {
  const std::vector<BodyMeasurement> two = {height_on("2026-08-29", 150), height_on("2026-11-26", 152)};  // 89 days
  EXPECT_FALSE(height_velocity(shipped_table(), two));
  EXPECT_EQ(next_due(shipped_table(), two), day("2027-02-24"));
  EXPECT_FALSE(height_velocity(shipped_table(), {two[0]}));
}

TEST(HeightVelocity, At90DaysThereIsOneWithItsError) {
  const auto found = height_velocity(shipped_table(), {height_on("2026-08-28", 150), height_on("2026-11-26", 151.2)});
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->cm_a_year, 4.87, 0.01);
  EXPECT_NEAR(found->high - found->cm_a_year, 2.87, 0.01);  // 0.5 cm twice, by root two, over 90 days
  EXPECT_NEAR(found->cm_a_year - found->low, 2.87, 0.01);
}

TEST(HeightVelocity, TheLatestThatIsFarEnoughBefore) {
  const auto found = height_velocity(shipped_table(), {height_on("2026-02-01", 148), height_on("2026-07-01", 150),
                                                       height_on("2026-10-20", 152), height_on("2026-11-26", 153)});
  ASSERT_TRUE(found);
  EXPECT_EQ(found->from, day("2026-07-01"));
  EXPECT_EQ(found->to, day("2026-11-26"));
}

// Centimetres a year over the days gives the change back.
TEST(HeightVelocity, UnitsRoundTrip) {
  EXPECT_TRUE(rc::check([] {
    const int days = *rc::gen::inRange(90, 1000);
    const double change = *rc::gen::inRange(-50, 300) / 10.0;
    RC_ASSERT(std::abs(cm_a_year(change, days) * days / kDaysAYear - change) < 1e-9);
  }));
}

// The longer between, the narrower; and the interval always holds the estimate.
TEST(HeightVelocity, TheErrorShrinksWithTime) {
  EXPECT_TRUE(rc::check([] {
    const Date from = day("2024-01-01");
    const int days = *rc::gen::inRange(90, 500);
    const auto width = [&](int so_many) {
      const auto found = height_velocity(
          shipped_table(), {{from, 150, {}, {}, 1}, {Date{from.days_since_epoch + so_many}, 153, {}, {}, 2}});
      RC_ASSERT(found->low < found->cm_a_year && found->cm_a_year < found->high);
      return found->high - found->low;
    };
    RC_ASSERT(width(days + 1) < width(days));
  }));
}

}  // namespace
}  // namespace lanework::care::growth
