// Power played against power by formula.
#include "core/evidence/power_by_simulation.h"

#include <gtest/gtest.h>

#include <cmath>

namespace lanework::evidence {
namespace {

// With the squads that the formula asks for, the effect is seen about as often as asked. The formula takes the plain
// difference of rates and adds one squad for Student's t; the play takes the log of their ratio.
TEST(PowerBySimulation, IsThatOfTheFormula) {
  for (const double variation : {0.0, 0.25, 0.4}) {
    const ClusterDesign design{0.004, 0.0026, 1500, variation, false};
    const int squads = static_cast<int>(std::ceil(clusters_an_arm(design, {})));
    const PlayedPower played = power_by_simulation({design, squads, 2000, 3}, 0.95);
    EXPECT_NEAR(played.power, 0.80, 0.05) << variation;
    EXPECT_EQ(played.too_few, 0);
  }
}

TEST(PowerBySimulation, NoEffectIsSeenAsSeldomAsItShouldBe) {
  const PlayedPower played = power_by_simulation({{0.004, 0.004, 1500, 0.25, false}, 15, 4000, 3}, 0.95);
  EXPECT_NEAR(played.power, 0.05, 0.015);
}

TEST(PowerBySimulation, SameSeedSameAnswer) {
  const PlayedDesign played{{0.004, 0.0026, 1500, 0.25, false}, 10, 300, 9};
  EXPECT_EQ(power_by_simulation(played, 0.95).power, power_by_simulation(played, 0.95).power);
}

TEST(PowerBySimulation, ArmsWithoutEventsAreCounted) {
  const PlayedPower played = power_by_simulation({{1e-6, 2e-6, 1000, 0, false}, 2, 200, 1}, 0.95);
  EXPECT_GT(played.too_few, 150);
  EXPECT_LT(played.power, 0.1);
}

}  // namespace
}  // namespace lanework::evidence
