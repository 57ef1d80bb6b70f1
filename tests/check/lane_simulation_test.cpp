// The checker walks through a lane player by player; the closed form of docs/model/clock.md is its oracle.
#include "core/check/lane_simulation.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace lanework::check {
namespace {

std::int64_t closed_form(const LaneSet& set) {
  const std::int64_t file = (set.players - 1) * set.gap + set.loop;
  if (set.gathers) return set.passes * file;
  return (set.passes - 1) * std::max(set.players * set.gap, set.loop) + file;
}

TEST(LaneSimulation, OnePlayerOnePass) { EXPECT_EQ(simulated({1, 1, 7000, 2000, 500, false}), 7000); }

TEST(LaneSimulation, GatheredPassesFollowEachOther) {
  EXPECT_EQ(simulated({3, 2, 5000, 2000, 500, true}), 18000);  // twice 2 x 2 + 5 s
}

TEST(LaneSimulation, AgreesWithTheClosedForm) {
  const bool passed = rc::check("equal players", [] {
    LaneSet set;
    set.players = *rc::gen::inRange(1, 25);
    set.passes = *rc::gen::inRange(1, 12);
    set.loop = *rc::gen::inRange(1, 60000);
    set.gap = *rc::gen::inRange(1, 8000);
    set.headway = std::min<std::int64_t>(500, set.gap);
    set.gathers = *rc::gen::arbitrary<bool>();
    RC_ASSERT(simulated(set) == closed_form(set));
  });
  EXPECT_TRUE(passed);
}

}  // namespace
}  // namespace lanework::check
