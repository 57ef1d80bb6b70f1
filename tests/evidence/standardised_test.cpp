#include "core/evidence/standardised.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <vector>

#include "core/evidence/poisson_limits.h"

namespace lanework::evidence {
namespace {

// Parts in proportion to the standard: the rate and its limits are those of the whole, exactly (Fay and Feuer).
RC_GTEST_PROP(Standardised, OfTheSameMakeUpIsTheCrudeRate, ()) {
  const auto counts = *rc::gen::container<std::vector<int>>(3, rc::gen::inRange(0, 30));
  const double factor = *rc::gen::inRange(1, 50);
  std::vector<StandardPart> parts;
  std::int64_t events = 0;
  double hours = 0;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const double own = 500.0 * static_cast<double>(i + 1);
    parts.push_back({counts[i], own, own * factor});
    events += counts[i];
    hours += own;
  }
  const Standardised found = standardised_rate(parts, 0.95);
  RC_ASSERT(std::abs(found.rate - found.crude) < 1e-12);
  const Interval exact = exact_limits(events, 0.95);
  RC_ASSERT(std::abs(found.limits.low - exact.low / hours) < 1e-9 * (1 + exact.low));
  RC_ASSERT(std::abs(found.limits.high - exact.high / hours) < 1e-9 * (1 + exact.high));
}

// By hand: 4 in 1000 h and 30 in 2000 h; a standard of equal hours gives (4 + 15) / 2 = 9.5 per 1000 h.
TEST(Standardised, ByHand) {
  const std::vector<StandardPart> parts = {{4, 1000, 1}, {30, 2000, 1}};
  const Standardised found = standardised_rate(parts, 0.95);
  EXPECT_NEAR(found.crude, 34.0 / 3000, 1e-12);
  EXPECT_NEAR(found.rate, 0.0095, 1e-12);
  EXPECT_LT(found.limits.low, found.rate);
  EXPECT_GT(found.limits.high, found.rate);
}

}  // namespace
}  // namespace lanework::evidence
