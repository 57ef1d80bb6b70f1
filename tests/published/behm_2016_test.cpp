// Behm, Blazevich, Kay, McHugh 2016, Appl Physiol Nutr Metab 41(1): static holds of 60 s a muscle and more
// cost power (-4.6 %), shorter ones little (-1.1 %), moving stretches none. No stretch of ours is held so long.
#include <gtest/gtest.h>

#include "tests/catalogue/shipped.h"

namespace lanework::catalogue {
namespace {

constexpr int kLongHoldSeconds = 60;

TEST(Behm2016, NoStretchIsHeldForAMinute) {
  for (const Drill& drill : test::shipped_catalogue().drills) {
    const bool stretches = drill.family == Family::kMobility || drill.phase == Phase::kLoosen;
    if (!stretches) continue;
    EXPECT_LT(drill.lane.stop.count, 1000 * kLongHoldSeconds) << drill.id;
    EXPECT_LT(drill.dose.tempo.count, 1000 * kLongHoldSeconds) << drill.id;
    if (drill.dose.kind != DoseKind::kSeconds) continue;
    for (const DoseStep& step : drill.dose.steps) EXPECT_LT(step.sets * step.amount, kLongHoldSeconds) << drill.id;
  }
}

}  // namespace
}  // namespace lanework::catalogue
