// How often the interval for days lost per hour holds the true value: simulated seasons of few and of many injuries,
// whose days are log-normal, Weibull, or mostly short with one in thirty of half a year and more.
#include "core/evidence/burden.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>
#include <vector>

namespace lanework::evidence {
namespace {

using Random = std::mt19937_64;

double normal(Random& random) { return std::normal_distribution<>()(random); }
double even(Random& random) { return std::uniform_real_distribution<>(1e-12, 1)(random); }
double log_normal_days(Random& random) { return std::max(1.0, std::floor(std::exp(1.8 + 1.2 * normal(random)))); }
double weibull_days(Random& random) {
  return std::max(1.0, std::floor(10 * std::pow(-std::log(even(random)), 1 / 0.7)));
}
double rarely_long_days(Random& random) {
  if (even(random) < 0.03) return std::floor(180 + 80 * even(random));
  return std::max(1.0, std::floor(std::exp(1.9 + 0.9 * normal(random))));
}

// The share of seasons whose interval holds the truth.
double coverage(double (*days_of)(Random&), double injuries, int seasons) {
  Random random(20261126);
  double mean = 0;
  constexpr int kForTheTruth = 400'000;
  for (int i = 0; i < kForTheTruth; ++i) mean += days_of(random) / kForTheTruth;
  int held = 0;
  for (int season = 0; season < seasons; ++season) {
    std::vector<double> days(static_cast<std::size_t>(std::poisson_distribution<>(injuries)(random)));
    std::generate(days.begin(), days.end(), [&] { return days_of(random); });
    const Interval limits = burden(days, 1, 0.95).limits;
    held += limits.low <= injuries * mean && injuries * mean <= limits.high ? 1 : 0;
  }
  return static_cast<double>(held) / seasons;
}

TEST(Burden, IntervalsHoldTheTruth) {
  for (const double injuries : {5.0, 20.0, 60.0}) {
    EXPECT_GE(coverage(log_normal_days, injuries, 150), 0.92) << injuries;
    EXPECT_GE(coverage(weibull_days, injuries, 150), 0.92) << injuries;
  }
  // Where one injury in thirty makes most of the days, seasons without such a one cannot know.
  EXPECT_GE(coverage(rarely_long_days, 20, 150), 0.80);
}

TEST(Burden, TooFewToSayHowLongTheNextOneLasts) {
  EXPECT_EQ(burden({}, 1000, 0.95).days_an_hour, 0);
  EXPECT_TRUE(std::isinf(burden({}, 1000, 0.95).limits.high));
  const Burden one = burden(std::vector<double>{12}, 1000, 0.95);
  EXPECT_DOUBLE_EQ(one.days_an_hour, 0.012);
  EXPECT_TRUE(std::isinf(one.limits.high));
  EXPECT_LT(one.limits.low, one.days_an_hour);
}

TEST(Burden, InsideItsLimitsAndByTheHour) {
  const std::vector<double> days = {1, 3, 3, 7, 14, 60};
  const Burden an_hour = burden(days, 1, 0.95);
  const Burden thousand = burden(days, 1000, 0.95);
  EXPECT_DOUBLE_EQ(an_hour.days_an_hour, 88);
  EXPECT_LT(an_hour.limits.low, 88);
  EXPECT_GT(an_hour.limits.high, 88);
  EXPECT_NEAR(thousand.limits.high * 1000 / an_hour.limits.high, 1, 1e-12);
}

}  // namespace
}  // namespace lanework::evidence
