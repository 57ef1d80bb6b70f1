// First game of the day against the second at a youth tournament: Rosenbaum DA, Silvis ML, Williams JE, Davis SW 2009,
// Inj Prev 15:266, table 2. Rates, ratios and limits reproduce to the printed digit with the normal approximation of
// the log ratio. The pooled ratios are R's (4.2.2).
#include <gtest/gtest.h>

#include <array>
#include <vector>

#include "core/evidence/rate_ratio.h"
#include "core/evidence/stratified.h"

namespace lanework::evidence {
namespace {

struct Row {
  Exposed first;
  Exposed second;
  double rate_first;  // per 1000 h
  double rate_second;
  double ratio;
  Interval limits;
  double half_a_digit;  // of the ratio
};
constexpr Exposed kBoysFirst{18, 2141.4};
constexpr Exposed kBoysSecond{8, 1438.7};
constexpr Exposed kGirlsFirst{21, 3326.0};
constexpr Exposed kGirlsSecond{21, 2233.0};
constexpr Exposed kYoungFirst{22, 3648.9};
constexpr Exposed kYoungSecond{15, 2311.5};
constexpr Exposed kOldFirst{17, 1818.6};
constexpr Exposed kOldSecond{14, 1360.2};
constexpr std::array<Row, 5> kRows = {{
    {{39, 5467.4}, {29, 3671.7}, 7.13, 7.90, 0.90, {0.56, 1.46}, 0.005},
    {kBoysFirst, kBoysSecond, 8.41, 5.56, 1.51, {0.66, 3.48}, 0.005},
    {kGirlsFirst, kGirlsSecond, 6.31, 9.40, 0.671, {0.37, 1.23}, 0.0005},
    {kYoungFirst, kYoungSecond, 6.03, 6.49, 0.93, {0.48, 1.79}, 0.005},
    {kOldFirst, kOldSecond, 9.35, 10.29, 0.91, {0.45, 1.84}, 0.005},
}};

double per_1000_h(const Exposed& at) { return 1000 * static_cast<double>(at.events) / at.hours; }

TEST(Rosenbaum2009, Table2) {
  for (const Row& row : kRows) {
    EXPECT_NEAR(per_1000_h(row.first), row.rate_first, 0.005);
    EXPECT_NEAR(per_1000_h(row.second), row.rate_second, 0.005);
    EXPECT_NEAR(rate_ratio(row.first, row.second), row.ratio, row.half_a_digit);
    const Tested wald = log_wald_ratio(row.first, row.second, 0.95);
    EXPECT_NEAR(wald.limits.low, row.limits.low, 0.005);
    EXPECT_NEAR(wald.limits.high, row.limits.high, 0.005);
  }
}

TEST(Rosenbaum2009, PooledOverSexAndOverAge) {
  const std::vector<Stratum> sexes = {{kBoysFirst, kBoysSecond}, {kGirlsFirst, kGirlsSecond}};
  const Pooled by_sex = mantel_haenszel_ratio(sexes, 0.95);
  EXPECT_NEAR(by_sex.estimate, 0.90313253, 1e-8);
  EXPECT_NEAR(by_sex.error, 0.24519373, 1e-8);
  EXPECT_NEAR(by_sex.limits.low, 0.55852447, 1e-8);
  EXPECT_NEAR(by_sex.limits.high, 1.46036281, 1e-8);
  const std::vector<Stratum> ages = {{kYoungFirst, kYoungSecond}, {kOldFirst, kOldSecond}};
  const Pooled by_age = mantel_haenszel_ratio(ages, 0.95);
  EXPECT_NEAR(by_age.estimate, 0.91936911, 1e-8);
  EXPECT_NEAR(by_age.limits.low, 0.56826503, 1e-8);
  EXPECT_NEAR(by_age.limits.high, 1.48740379, 1e-8);
}

}  // namespace
}  // namespace lanework::evidence
