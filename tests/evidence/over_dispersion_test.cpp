// Squads that differ more than by chance, and those that do not.
#include <gtest/gtest.h>

#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>
#include <vector>

#include "core/evidence/funnel.h"
#include "core/evidence/random_engine.h"

namespace lanework::evidence {
namespace {

std::vector<SquadCount> drawn(double deviation, std::uint32_t run) {
  RandomEngine engine(11, 2, 0, run);
  boost::random::normal_distribution<double> effect(0, deviation);
  std::vector<SquadCount> out;
  for (int squad = 0; squad < 40; ++squad) {
    const double expected = 5 + 15 * uniform_from(engine());
    const double mean = expected * (deviation > 0 ? std::exp(effect(engine)) : 1);
    out.push_back({boost::random::poisson_distribution<std::int64_t, double>(mean)(engine), expected});
  }
  return out;
}

TEST(OverDispersion, SeldomWhereSquadsAreAlikeMostlyWhereTheyAreNot) {
  int alike = 0;
  int apart = 0;
  double sum = 0;
  for (std::uint32_t run = 0; run < 400; ++run) {
    const OverDispersion chance = over_dispersion(drawn(0, run));
    sum += chance.factor;
    alike += chance.beyond_chance ? 1 : 0;
    apart += over_dispersion(drawn(0.5, run)).beyond_chance ? 1 : 0;
  }
  EXPECT_LT(alike, 24);
  EXPECT_GT(apart, 360);
  // The drawing in of the ends takes a little off 1.
  EXPECT_NEAR(sum / 400, 0.8, 0.15);
}

TEST(OverDispersion, WidensLimitsAboutOneAndNeverBelowNought) {
  const OverDispersion none{1.1, false};
  EXPECT_EQ(widened_limit(10, 0.975, none), funnel_limit(10, 0.975));
  const OverDispersion four{4, true};
  EXPECT_NEAR(widened_limit(10, 0.975, four) - 1, 2 * (funnel_limit(10, 0.975) - 1), 1e-12);
  EXPECT_EQ(widened_limit(3, 0.001, four), 0);
}

}  // namespace
}  // namespace lanework::evidence
