// Arms of squads against each other: what the method is by hand, and how often its interval holds the truth.
#include "core/evidence/clustered_ratio.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>
#include <vector>

#include "core/evidence/random_engine.h"

namespace lanework::evidence {
namespace {

// Arm one: 2, 4 in 1000 h each, 3 expected of either: squares 1 + 1, variance 2 x 2 / 1 / 6^2 = 1 / 9. Arm other: 1, 5,
// 6 in 1000 h: mean 4, squares 9 + 1 + 4 = 14, variance 14 x 3 / 2 / 12^2 = 7 / 48.
TEST(ClusteredRatio, ByHand) {
  const std::vector<Exposed> one = {{2, 1000}, {4, 1000}};
  const std::vector<Exposed> other = {{1, 1000}, {5, 1000}, {6, 1000}};
  const ClusteredRatio found = clustered_ratio(one, other, 0.95);
  EXPECT_NEAR(found.ratio, 0.75, 1e-12);
  EXPECT_EQ(found.degrees, 3);
  EXPECT_NEAR(found.error, std::sqrt(1.0 / 9 + 7.0 / 48), 1e-12);
  EXPECT_NEAR(found.variance_factor, (1.0 / 9 + 7.0 / 48) / (1.0 / 6 + 1.0 / 12), 1e-12);
  // Student's t with 3 degrees: 3.182446 (printed in every table).
  EXPECT_NEAR(found.tested.limits.high, 0.75 * std::exp(3.182446 * found.error), 1e-5);
}

RC_GTEST_PROP(ClusteredRatio, PAgreesWithTheInterval, ()) {
  const auto squads = [] {
    return *rc::gen::container<std::vector<Exposed>>(
        6, rc::gen::construct<Exposed>(rc::gen::inRange<std::int64_t>(0, 12),
                                       rc::gen::map(rc::gen::inRange(100, 3000), [](int h) { return 1.0 * h; })));
  };
  const std::vector<Exposed> one = squads();
  const std::vector<Exposed> other = squads();
  const auto events = [](const std::vector<Exposed>& arm) {
    std::int64_t sum = 0;
    for (const Exposed& squad : arm) sum += squad.events;
    return sum;
  };
  RC_PRE(events(one) > 0 && events(other) > 0);
  const ClusteredRatio found = clustered_ratio(one, other, 0.9);
  RC_PRE(found.error > 0);
  RC_ASSERT((found.tested.p < 0.1) == (found.tested.limits.low > 1 || found.tested.limits.high < 1));
  const ClusteredRatio back = clustered_ratio(other, one, 0.9);
  RC_ASSERT(std::abs(std::log(back.ratio) + std::log(found.ratio)) < 1e-9);
}

// 2,000 simulated clubs of 12 and 12 squads of 1000 to 2000 h, 4 in 1000 h, squads' rates 30 % apart.
TEST(ClusteredRatio, HoldsTheTruthAsOftenAsItSays) {
  constexpr int kClubs = 2000;
  int held = 0;
  int naive_held = 0;
  for (std::uint32_t club = 0; club < kClubs; ++club) {
    RandomEngine engine(20261126, 7, 0, club);
    boost::random::normal_distribution<double> effect(0, 0.3);
    const auto arm = [&](double rate) {
      std::vector<Exposed> out;
      for (int squad = 0; squad < 12; ++squad) {
        const double hours = 1000 + 1000 * uniform_from(engine());
        boost::random::poisson_distribution<std::int64_t, double> events(rate * hours * std::exp(effect(engine)));
        out.push_back({events(engine), hours});
      }
      return out;
    };
    const std::vector<Exposed> one = arm(0.0026);
    const std::vector<Exposed> other = arm(0.004);
    const ClusteredRatio found = clustered_ratio(one, other, 0.95);
    if (found.tested.limits.low <= 0.65 && 0.65 <= found.tested.limits.high) ++held;
    Exposed all_one;
    Exposed all_other;
    for (int i = 0; i < 12; ++i) {
      all_one = {all_one.events + one[static_cast<std::size_t>(i)].events,
                 all_one.hours + one[static_cast<std::size_t>(i)].hours};
      all_other = {all_other.events + other[static_cast<std::size_t>(i)].events,
                   all_other.hours + other[static_cast<std::size_t>(i)].hours};
    }
    const Interval naive = log_wald_ratio(all_one, all_other, 0.95).limits;
    if (naive.low <= 0.65 && 0.65 <= naive.high) ++naive_held;
  }
  EXPECT_GE(held, 0.93 * kClubs);
  EXPECT_LE(held, 0.97 * kClubs);
  // Players counted as if each were by himself: the limits are too close.
  EXPECT_LT(naive_held, 0.92 * kClubs);
}

}  // namespace
}  // namespace lanework::evidence
