#include "core/findings/stratified_comparison.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/evidence/clustered_ratio.h"

namespace lanework::findings {
namespace {

using evidence::Exposed;
using evidence::Stratum;

// Rosenbaum 2009 (tests/published/rosenbaum_2009_test.cpp), girls and boys as strata, one squad in each.
TEST(StratifiedComparison, OfAPublishedTable) {
  const ArmCells cells = {{{"boys", "boys"}, {{18, 2141.4}, {8, 1438.7}}},
                          {{"girls", "girls"}, {{21, 3326.0}, {21, 2233.0}}}};
  const StratifiedComparison found = compare_arms(cells, 0.95);
  EXPECT_EQ(found.strata, 2);
  ASSERT_TRUE(found.ratio);
  EXPECT_NEAR(found.ratio->estimate, 0.90313253, 1e-8);
  EXPECT_NEAR(found.ratio->limits.low, 0.55852447, 1e-8);
  EXPECT_NEAR(found.ratio->limits.high, 1.46036281, 1e-8);
  EXPECT_FALSE(found.ratio_by_squads);
}

TEST(StratifiedComparison, StrataOfOneArmAreLeftOutAndCounted) {
  const ArmCells cells = {{{"a", "U9"}, {{3, 100}, {}}},
                          {{"a", "U11"}, {{4, 200}, {2, 100}}},
                          {{"b", "U13"}, {{}, {5, 50}}},
                          {{"b", "U11"}, {{}, {2, 100}}}};
  const StratifiedComparison found = compare_arms(cells, 0.95);
  EXPECT_EQ(found.strata, 1);
  EXPECT_EQ(found.squads, 2);
  EXPECT_EQ(found.hours_outside, 150);
  EXPECT_EQ(found.events_outside, 8);
  EXPECT_EQ(found.one.events, 7);
  EXPECT_EQ(found.other.events, 9);
  ASSERT_TRUE(found.ratio);
  EXPECT_NEAR(found.ratio->estimate, (4.0 / 200) / (4.0 / 200), 1e-12);
}

TEST(StratifiedComparison, WithoutInjuriesInAnArmThereIsNoRatio) {
  const ArmCells cells = {{{"a", "U9"}, {{0, 100}, {3, 100}}}};
  EXPECT_FALSE(compare_arms(cells, 0.95).ratio);
  EXPECT_EQ(compare_arms(cells, 0.95).crude, 0);
  EXPECT_FALSE(compare_arms({}, 0.95).ratio);
}

// One squad holds all of an arm's injuries: without it there is nothing to compare.
TEST(StratifiedComparison, NoLimitsBySquadsWhereOneSquadIsAll) {
  const ArmCells cells = {{{"a", "U9"}, {{3, 100}, {3, 100}}},
                          {{"b", "U9"}, {{0, 100}, {3, 100}}},
                          {{"c", "U9"}, {{0, 100}, {3, 100}}},
                          {{"d", "U9"}, {{0, 100}, {1, 100}}}};
  const StratifiedComparison found = compare_arms(cells, 0.95);
  EXPECT_TRUE(found.ratio);
  EXPECT_FALSE(found.ratio_by_squads);
}

// Twelve squads whole in one arm, of one stratum: near the ratio of arms of squads, and a little wider.
TEST(StratifiedComparison, NearsTheRatioOfArmsOfSquads) {
  ArmCells cells;
  std::vector<Exposed> one;
  std::vector<Exposed> other;
  for (int squad = 0; squad < 12; ++squad) {
    one.push_back({4 + squad % 3, 1000.0 + 10 * squad});
    other.push_back({7 + squad % 4, 1100.0 - 10 * squad});
    cells[{"one" + std::to_string(squad), "all"}] = {one.back(), {}};
    cells[{"other" + std::to_string(squad), "all"}] = {{}, other.back()};
  }
  const StratifiedComparison found = compare_arms(cells, 0.95);
  const evidence::ClusteredRatio arms = evidence::clustered_ratio(one, other, 0.95);
  ASSERT_TRUE(found.ratio_by_squads);
  EXPECT_NEAR(found.ratio->estimate, arms.ratio, 1e-12);
  EXPECT_NEAR(found.ratio_by_squads->error / arms.error, 1, 0.03);
}

ArmCells drawn_cells() {
  ArmCells cells;
  for (int squad = 0; squad < 6; ++squad) {
    for (const char* stratum : {"U9", "U13"}) {
      const auto arm = [] {
        return Exposed{*rc::gen::inRange(1, 9), static_cast<double>(*rc::gen::inRange(50, 2000))};
      };
      cells[{"s" + std::to_string(squad), stratum}] = {arm(), arm()};
    }
  }
  return cells;
}

RC_GTEST_PROP(StratifiedComparison, TheArmsChangePlaces, ()) {
  const ArmCells cells = drawn_cells();
  ArmCells turned;
  for (const auto& [key, counts] : cells) turned[key] = Stratum{counts.other, counts.one};
  const StratifiedComparison a = compare_arms(cells, 0.95);
  const StratifiedComparison b = compare_arms(turned, 0.95);
  const auto near = [](double x, double y) { return std::abs(x - y) <= 1e-9 * (1 + std::abs(x)); };
  RC_ASSERT(near(a.ratio->estimate * b.ratio->estimate, 1));
  RC_ASSERT(near(a.ratio_limits().low * b.ratio_limits().high, 1));
  RC_ASSERT(near(a.difference_limits().low, -b.difference_limits().high));
  RC_ASSERT(a.ratio_limits().low <= a.ratio->limits.low && a.ratio_limits().high >= a.ratio->limits.high);
}

RC_GTEST_PROP(StratifiedComparison, AUnitOfHoursDoesNotMatter, ()) {
  const ArmCells cells = drawn_cells();
  ArmCells minutes = cells;
  for (auto& [key, counts] : minutes) {
    counts.one.hours *= 60;
    counts.other.hours *= 60;
  }
  const StratifiedComparison a = compare_arms(cells, 0.9);
  const StratifiedComparison b = compare_arms(minutes, 0.9);
  const auto near = [](double x, double y) { return std::abs(x - y) <= 1e-9 * (1 + std::abs(x)); };
  RC_ASSERT(near(a.ratio_by_squads->limits.low, b.ratio_by_squads->limits.low));
  RC_ASSERT(near(a.difference_by_squads->limits.high, 60 * b.difference_by_squads->limits.high));
}

}  // namespace
}  // namespace lanework::findings
