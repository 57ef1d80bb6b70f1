// Numbers needed to treat from a difference and its limits.
// Altman DG 1998, BMJ 317:1309-1312, doi 10.1136/bmj.317.7168.1309, with the example that Newcombe RG takes up in his
// letter of 1999 (a reduction of -5 % to +25 %: benefit in 4, over infinity, harm in 20), and Barrowman NJ 2002, CMAJ
// 166:1676 (16.6 %, 0.9 % to 32.2 %: about 6, 3.1 to 111.1).
#include <gtest/gtest.h>

#include "core/evidence/needed_to_treat.h"

namespace lanework::evidence {
namespace {

TEST(Altman1998, LimitsOnBothSidesOfNoDifferenceRunThroughInfinity) {
  const NeededToTreat needed = needed_to_treat(0.10, {-0.05, 0.25});
  EXPECT_TRUE(needed.through_infinity);
  EXPECT_NEAR(needed.estimate.value(), 10, 1e-12);
  EXPECT_NEAR(needed.most_benefit.value(), 4, 1e-12);
  EXPECT_NEAR(needed.least_benefit.value(), -20, 1e-12);
}

TEST(Altman1998, LimitsOnOneSide) {
  const NeededToTreat needed = needed_to_treat(0.166, {0.009, 0.322});
  EXPECT_FALSE(needed.through_infinity);
  EXPECT_NEAR(needed.estimate.value(), 6.0241, 5e-5);
  EXPECT_NEAR(needed.most_benefit.value(), 3.1056, 5e-5);
  EXPECT_NEAR(needed.least_benefit.value(), 111.111, 5e-4);
}

TEST(Altman1998, NoDifferenceHasNoNumber) {
  EXPECT_FALSE(needed_to_treat(0, {-0.1, 0.1}).estimate.has_value());
  EXPECT_FALSE(needed_to_treat(0.1, {0, 0.2}).least_benefit.has_value());
}

}  // namespace
}  // namespace lanework::evidence
