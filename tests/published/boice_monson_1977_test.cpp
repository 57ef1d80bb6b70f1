// Fluoroscopy and breast cancer, Boice JD, Monson RR 1977, J Natl Cancer Inst, as worked in Rothman KJ, Greenland S,
// Modern Epidemiology, and printed by a general statistics package's manual: 41 cases in 28 010 years, 15 in 19 017.
#include <gtest/gtest.h>

#include "core/evidence/rate_ratio.h"

namespace lanework::evidence {
namespace {

constexpr Exposed kExposed{41, 28010};
constexpr Exposed kUnexposed{15, 19017};

TEST(BoiceMonson1977, RatioWithExactLimits) {
  EXPECT_NEAR(rate_ratio(kExposed, kUnexposed), 1.855759, 5e-7);
  const Tested exact = exact_ratio(kExposed, kUnexposed, 0.95);
  EXPECT_NEAR(exact.limits.low, 1.005684, 5e-7);
  EXPECT_NEAR(exact.limits.high, 3.6093, 5e-5);
}

TEST(BoiceMonson1977, MidP) { EXPECT_NEAR(mid_p_ratio(kExposed, kUnexposed, 0.95).p, 0.0355, 5e-5); }

TEST(BoiceMonson1977, DifferenceOfRates) {
  const Difference difference = rate_difference(kExposed, kUnexposed, 0.95);
  EXPECT_NEAR(difference.per_hour, 0.000675, 5e-7);
  EXPECT_NEAR(difference.limits.low, 0.0000749, 5e-8);
  EXPECT_NEAR(difference.limits.high, 0.0012751, 5e-8);
}

// Four p values for one table. These are R's (4.2.2), not printed ones.
TEST(BoiceMonson1977, EveryConventionHasItsOwnP) {
  EXPECT_NEAR(exact_ratio(kExposed, kUnexposed, 0.95).p, 0.04766025, 5e-9);
  EXPECT_NEAR(mid_p_ratio(kExposed, kUnexposed, 0.95).p, 0.03545742, 5e-9);
  EXPECT_NEAR(least_likely_p(kExposed, kUnexposed), 0.04085203, 5e-9);
  const Tested mid_p = mid_p_ratio(kExposed, kUnexposed, 0.95);
  EXPECT_NEAR(mid_p.limits.low, 1.04107524, 5e-8);
  EXPECT_NEAR(mid_p.limits.high, 3.44942276, 5e-8);
  const Tested wald = log_wald_ratio(kExposed, kUnexposed, 0.95);
  EXPECT_NEAR(wald.limits.low, 1.02722600, 5e-8);
  EXPECT_NEAR(wald.limits.high, 3.35256331, 5e-8);
}

}  // namespace
}  // namespace lanework::evidence
