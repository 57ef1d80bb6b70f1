// Williams, West, Cross, Stokes 2017, doi 10.1136/bjsports-2016-096589: the weight of today is 2 / (N + 1). Worked by
// hand from the formula.
#include <gtest/gtest.h>

#include "core/care/load/weighted_mean.h"

namespace lanework::care::load {
namespace {

TEST(Williams2017, Weights) {
  EXPECT_DOUBLE_EQ(decay_of(7), 0.25);
  EXPECT_NEAR(decay_of(28), 0.0689655, 5e-8);
}

TEST(Williams2017, ThreeDaysFromASeed) {
  const std::vector<double> recent = weighted_means(100, {300, 0, 200}, kShortDays);
  EXPECT_NEAR(recent[0], 150, 0.001);
  EXPECT_NEAR(recent[1], 112.5, 0.001);
  EXPECT_NEAR(recent[2], 134.375, 0.001);
  const std::vector<double> usual = weighted_means(100, {300, 0, 200}, kLongDays);
  EXPECT_NEAR(usual[0], 113.793, 0.001);
  EXPECT_NEAR(usual[1], 105.945, 0.001);
  EXPECT_NEAR(usual[2], 112.432, 0.001);
}

}  // namespace
}  // namespace lanework::care::load
