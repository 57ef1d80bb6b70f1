// Events that a comparison needs: Schoenfeld DA 1983, Biometrics 39:499-503, doi 10.2307/2531021; Therneau TM, Grambsch
// PM 2000, Modeling Survival Data, page 63, as in a package's documentation: survival of 0.30 to 0.45 with 90 % power
// takes 250 events.
#include <gtest/gtest.h>

#include <cmath>

#include "core/evidence/power.h"

namespace lanework::evidence {
namespace {

TEST(Schoenfeld1983, Page63) {
  const double ratio = std::log(0.45) / std::log(0.30);
  EXPECT_NEAR(ratio, 0.663227, 5e-7);
  const double events = events_needed(ratio, 0.5, {0.95, 0.90});
  EXPECT_NEAR(events, 249.252, 5e-4);
  EXPECT_EQ(2 * std::ceil(events / 2), 250);
}

// By a second computation, 80 % power, arms of the same size.
TEST(Schoenfeld1983, UsualRatios) {
  EXPECT_NEAR(events_needed(0.5, 0.5, {}), 65.35, 5e-3);
  EXPECT_NEAR(events_needed(0.6, 0.5, {}), 120.32, 5e-3);
  EXPECT_NEAR(events_needed(0.65, 0.5, {}), 169.18, 5e-3);
  EXPECT_NEAR(events_needed(0.7, 0.5, {}), 246.79, 5e-3);
  EXPECT_NEAR(events_needed(0.8, 0.5, {}), 630.52, 5e-3);
}

TEST(Schoenfeld1983, DesignEffect) {
  EXPECT_NEAR(design_effect(30, 0.4), 12.6, 1e-12);
  EXPECT_NEAR(design_effect(20, 0.02), 1.38, 1e-12);
  EXPECT_NEAR(design_effect(10, 0.09), 1.81, 1e-12);
}

}  // namespace
}  // namespace lanework::evidence
