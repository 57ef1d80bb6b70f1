#include "core/evidence/shrunken_share.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

namespace lanework::evidence {
namespace {

// Beta(2, 1) has the distribution x^2, Beta(1, 3) has 1 - (1 - x)^3.
TEST(ShrunkenShare, LimitsOfDistributionsThatCanBeWrittenDown) {
  const ShrunkenShare rising = shrunken_share(1, 1, {0.5, 2}, 0.9);
  EXPECT_DOUBLE_EQ(rising.estimate, 2.0 / 3);
  EXPECT_NEAR(rising.limits.low, std::sqrt(0.05), 1e-12);
  EXPECT_NEAR(rising.limits.high, std::sqrt(0.95), 1e-12);
  const ShrunkenShare falling = shrunken_share(0, 2, {0.5, 2}, 0.9);
  EXPECT_DOUBLE_EQ(falling.estimate, 0.25);
  EXPECT_NEAR(falling.limits.low, 1 - std::cbrt(0.95), 1e-12);
  EXPECT_NEAR(falling.limits.high, 1 - std::cbrt(0.05), 1e-12);
}

TEST(ShrunkenShare, WithoutEventsTheUsualShareStands) {
  const ShrunkenShare none = shrunken_share(0, 0, {0.18, 40}, 0.95);
  EXPECT_DOUBLE_EQ(none.estimate, 0.18);
  EXPECT_LT(none.limits.low, 0.18);
  EXPECT_GT(none.limits.high, 0.18);
}

TEST(ShrunkenShareProperty, BetweenTheUsualShareAndItsOwn) {
  EXPECT_TRUE(rc::check([] {
    const int of = *rc::gen::inRange(1, 2000);
    const int count = *rc::gen::inRange(0, of + 1);
    const UsualShare usual{*rc::gen::inRange(1, 100) / 100.0, static_cast<double>(*rc::gen::inRange(1, 400))};
    const double own = static_cast<double>(count) / of;
    const ShrunkenShare found = shrunken_share(count, of, usual, 0.95);
    RC_ASSERT(found.estimate >= std::min(own, usual.share) - 1e-12);
    RC_ASSERT(found.estimate <= std::max(own, usual.share) + 1e-12);
    RC_ASSERT(found.limits.low <= found.limits.high);
    const ShrunkenShare more = shrunken_share(count + 1, of + 1, usual, 0.95);
    RC_ASSERT(more.estimate >= found.estimate);
    RC_ASSERT(more.limits.low >= found.limits.low - 1e-12);
    RC_ASSERT(more.limits.high >= found.limits.high - 1e-12);
  }));
}

}  // namespace
}  // namespace lanework::evidence
