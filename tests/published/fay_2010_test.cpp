// p values and the intervals that belong to them: Fay MP 2010, R Journal 2(1):53-58, doi 10.32614/RJ-2010-008. His
// data: 2 in 17 877 against 9 in 16 660. Values by R 4.2.2.
#include <gtest/gtest.h>

#include "core/evidence/rate_ratio.h"

namespace lanework::evidence {
namespace {

constexpr Exposed kOne{2, 17877};
constexpr Exposed kOther{9, 16660};

TEST(Fay2010, TwoRulesTwoVerdicts) {
  const Tested exact = exact_ratio(kOne, kOther, 0.95);
  EXPECT_NEAR(rate_ratio(kOne, kOther), 0.20709416, 5e-9);
  EXPECT_NEAR(exact.limits.low, 0.02177406, 5e-9);
  EXPECT_NEAR(exact.limits.high, 1.00054910, 5e-8);
  EXPECT_NEAR(exact.p, 0.05010650, 5e-9);
  EXPECT_NEAR(least_likely_p(kOne, kOther), 0.03309420, 5e-9);
}

// Whatever the counts, p is below 0.05 exactly where the interval leaves out 1.
TEST(Fay2010, IntervalAndPAgree) {
  int left_out = 0;
  for (int x = 0; x <= 25; ++x) {
    for (int y = 0; y <= 25; ++y) {
      const Exposed one{x, 1250};
      const Exposed other{y, 1700};
      for (const Tested& tested : {exact_ratio(one, other, 0.95), mid_p_ratio(one, other, 0.95)}) {
        const bool outside = tested.limits.low > 1 || tested.limits.high < 1;
        EXPECT_EQ(tested.p < 0.05, outside) << x << ' ' << y;
        left_out += outside ? 1 : 0;
      }
    }
  }
  EXPECT_GT(left_out, 100);
}

}  // namespace
}  // namespace lanework::evidence
