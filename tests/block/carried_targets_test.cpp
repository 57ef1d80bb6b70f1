// What weeks owe each other, by hand and by what must hold whatever was missed.
#include "core/block/carried_targets.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework::block {
namespace {

using Targets = std::vector<std::vector<int>>;

WeekAccount over(int promised, int given) { return {{promised}, {given}, true, true}; }
WeekAccount to_come() { return {{0}, {0}, false, true}; }
WeekAccount holiday() { return {{0}, {0}, false, false}; }

TEST(CarriedTargets, WhatWasNotDoneGoesToTheNextTwoWeeksTheLargerHalfFirst) {
  EXPECT_EQ(carried_targets({10}, {over(10, 5), to_come(), to_come(), to_come()}), (Targets{{10}, {13}, {12}, {10}}));
}

TEST(CarriedTargets, OnlyWhatThePlanHadPromisedIsOwed) {
  EXPECT_EQ(carried_targets({10}, {over(6, 6), to_come()}), (Targets{{10}, {10}}));
  EXPECT_EQ(carried_targets({10}, {over(6, 4), to_come(), to_come()}), (Targets{{10}, {11}, {11}}));
  // Beyond the target nothing is owed.
  EXPECT_EQ(carried_targets({10}, {over(16, 10), to_come()}), (Targets{{10}, {10}}));
}

TEST(CarriedTargets, AMissedWeekRaisesNoTargetByMoreThanHalf) {
  EXPECT_EQ(carried_targets({10}, {over(10, 0), over(10, 0), to_come(), to_come()}), (Targets{{10}, {15}, {15}, {15}}));
  EXPECT_EQ(carried_targets({5}, {over(5, 0), to_come(), to_come()}), (Targets{{5}, {7}, {7}}));
}

TEST(CarriedTargets, WeeksWithoutASessionArePassedOver) {
  EXPECT_EQ(carried_targets({10}, {over(10, 8), holiday(), to_come(), to_come()}), (Targets{{10}, {10}, {11}, {11}}));
}

TEST(CarriedTargets, LaterWeeksOfTheBlockAreAllThatCanPay) {
  EXPECT_EQ(carried_targets({10}, {to_come(), over(10, 0)}), (Targets{{10}, {10}}));
}

TEST(CarriedTargets, NeverBelowTheBaseNorAboveHalfAsMuchAgain) {
  EXPECT_TRUE(rc::check([](const std::vector<std::pair<std::uint8_t, std::uint8_t>>& drawn, std::uint8_t base_drawn) {
    const int base = base_drawn % 20;
    std::vector<WeekAccount> weeks;
    int owed = 0;
    for (const auto& [promised, given] : drawn) {
      weeks.push_back({{promised % 24}, {given % 24}, weeks.size() < 3, promised % 5 != 0});
      owed += weeks.back().over ? std::max(0, promised % 24 - given % 24) : 0;
    }
    int carried = 0;
    for (const std::vector<int>& target : carried_targets({base}, weeks)) {
      RC_ASSERT(target[0] >= base);
      RC_ASSERT(target[0] <= base + base / 2);
      carried += target[0] - base;
    }
    RC_ASSERT(carried <= owed);
  }));
}

}  // namespace
}  // namespace lanework::block
