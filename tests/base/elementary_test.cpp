// exp and log against the C library in long double; the normal quantile against its inverse, the C
// library's erfc.
#include "core/base/elementary.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>

namespace lanework {
namespace {

// Distance in units in the last place of the true value.
double ulps(double found, long double truth) {
  const double nearest = static_cast<double>(truth);
  const double unit = std::nextafter(std::fabs(nearest), std::numeric_limits<double>::infinity()) - std::fabs(nearest);
  return static_cast<double>(std::fabs(static_cast<long double>(found) - truth) / unit);
}

double in_range(double least, double most) {
  const auto word = *rc::gen::inRange<std::int64_t>(0, std::int64_t{1} << 52);
  return least + (most - least) * (static_cast<double>(word) * 0x1p-52);
}

TEST(ElementaryExp, IsWithinTwoUlp) {
  EXPECT_TRUE(rc::check("exp against the C library", [] {
    const double x = in_range(-700, 700);
    RC_ASSERT(ulps(elementary_exp(x), std::exp(static_cast<long double>(x))) <= 2.0);
    const double small = in_range(-1, 1);
    RC_ASSERT(ulps(elementary_exp(small), std::exp(static_cast<long double>(small))) <= 2.0);
  }));
  double worst = 0;
  for (int i = -200000; i <= 200000; ++i) {
    const double x = i * 1.7e-5;
    worst = std::max(worst, ulps(elementary_exp(x), std::exp(static_cast<long double>(x))));
  }
  EXPECT_LE(worst, 1.0);
  EXPECT_EQ(elementary_exp(0), 1.0);
}

TEST(ElementaryExp, EndsWell) {
  EXPECT_EQ(elementary_exp(710), std::numeric_limits<double>::infinity());
  EXPECT_EQ(elementary_exp(-800), 0.0);
  EXPECT_TRUE(std::isnan(elementary_exp(std::numeric_limits<double>::quiet_NaN())));
  EXPECT_NEAR(elementary_exp(-740) / std::exp(-740.0), 1.0, 1e-2);
}

TEST(ElementaryLog, IsWithinTwoUlp) {
  EXPECT_TRUE(rc::check("log against the C library", [] {
    const double x = elementary_exp(in_range(-700, 700));
    RC_ASSERT(ulps(elementary_log(x), std::log(static_cast<long double>(x))) <= 2.0);
    const double near_one = in_range(0.5, 2.0);
    RC_ASSERT(near_one == 1.0 || ulps(elementary_log(near_one), std::log(static_cast<long double>(near_one))) <= 2.0);
  }));
  double worst = 0;
  for (int i = 1; i <= 400000; ++i) {
    const double x = 0.4 + i * 1e-5;
    if (x != 1.0) worst = std::max(worst, ulps(elementary_log(x), std::log(static_cast<long double>(x))));
  }
  EXPECT_LE(worst, 1.5);
  EXPECT_EQ(elementary_log(1), 0.0);
}

TEST(ElementaryLog, EndsWell) {
  EXPECT_EQ(elementary_log(0), -std::numeric_limits<double>::infinity());
  EXPECT_TRUE(std::isnan(elementary_log(-1)));
  EXPECT_DOUBLE_EQ(elementary_log(std::numeric_limits<double>::denorm_min()), -744.4400719213812);
}

TEST(NormalQuantile, UndoesTheDistribution) {
  EXPECT_TRUE(rc::check("erfc of the quantile is the probability", [] {
    const double p = in_range(1e-9, 0.5);
    const double z = normal_quantile(p);
    RC_ASSERT(std::fabs(0.5 * std::erfc(-z / std::sqrt(2.0)) / p - 1) < 1e-13);
    RC_ASSERT(std::fabs(normal_quantile(1 - p) + normal_quantile(1 - (1 - p))) < 1e-6);
  }));
}

}  // namespace
}  // namespace lanework
