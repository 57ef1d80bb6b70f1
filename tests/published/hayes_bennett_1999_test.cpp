// Clusters for a trial of rates: Hayes RJ, Bennett S 1999, Int J Epidemiol 28:319-326, doi 10.1093/ije/28.2.319. The
// formula from memory; the input of the first case is in the documentation of a sample-size package, the results are a
// second computation.
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <utility>

#include "core/evidence/power.h"

namespace lanework::evidence {
namespace {

TEST(HayesBennett1999, HalvingOfARareEvent) {
  const ClusterDesign unmatched{0.01, 0.005, 2000, 0.25, false};
  const ClusterDesign matched{0.01, 0.005, 2000, 0.25, true};
  EXPECT_NEAR(clusters_an_arm(unmatched, {}), 5.807439, 1e-6);
  EXPECT_NEAR(clusters_an_arm(matched, {}), 6.807439, 1e-6);
  EXPECT_NEAR(clusters_an_arm({0.01, 0.005, 2000, 0, false}, {}) - 1, 2.35, 0.005);
}

// 4 injuries in 1000 h against 2.6, squads of 1500 h.
TEST(HayesBennett1999, SquadsOfAClub) {
  constexpr std::array<std::pair<double, double>, 4> kRows = {
      {{0, 18.620}, {0.15, 20.671}, {0.25, 24.316}, {0.4, 33.203}}};
  for (const auto& [variation, squads] : kRows)
    EXPECT_NEAR(clusters_an_arm({0.004, 0.0026, 1500, variation, false}, {}), squads, 5e-4);
}

TEST(HayesBennett1999, VariationOfLogRates) { EXPECT_NEAR(variation_of(0.3), std::sqrt(std::exp(0.09) - 1), 1e-12); }

}  // namespace
}  // namespace lanework::evidence
