#include "core/people/weighted_matching.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

#include "core/people/fewest_alone.h"

namespace lanework::people {
namespace {

constexpr std::int64_t kUnpaired = -1;

// The cheapest way to match all vertices not yet used, by trying everything; kUnpaired when there is none.
std::int64_t try_everything(const CostTable& costs, unsigned used) {
  int first = 0;
  while (first < costs.size() && (used >> first & 1U) != 0) ++first;
  if (first == costs.size()) return 0;
  std::int64_t best = kUnpaired;
  for (int mate = first + 1; mate < costs.size(); ++mate) {
    if ((used >> mate & 1U) != 0 || costs.at(first, mate) == kNoEdge) continue;
    const std::int64_t rest = try_everything(costs, used | 1U << first | 1U << mate);
    if (rest == kUnpaired) continue;
    const std::int64_t cost = rest + costs.at(first, mate);
    if (best == kUnpaired || cost < best) best = cost;
  }
  return best;
}

CostTable random_costs(int size, int most, int edges_in_ten) {
  CostTable costs(size);
  for (int u = 0; u < size; ++u) {
    for (int v = 0; v < u; ++v) {
      if (*rc::gen::inRange(0, 10) < edges_in_ten) costs.set(u, v, *rc::gen::inRange(0, most));
    }
  }
  return costs;
}

// What makes an answer right, whoever found it: pairs of edges, duals that are feasible, and equal values.
void expect_proven(const CostTable& costs, const PerfectMatching& matching) {
  std::int64_t cost = 0;
  for (int u = 0; u < costs.size(); ++u) {
    const int mate = matching.mate[static_cast<std::size_t>(u)];
    RC_ASSERT(mate >= 0 && mate != u);
    RC_ASSERT(matching.mate[static_cast<std::size_t>(mate)] == u);
    RC_ASSERT(costs.at(u, mate) != kNoEdge);
    RC_ASSERT(matching.reduced.at(u, mate) == 0);
    if (u < mate) cost += costs.at(u, mate);
    for (int v = 0; v < costs.size(); ++v) {
      if (u != v && costs.at(u, v) != kNoEdge) RC_ASSERT(matching.reduced.at(u, v) >= 0);
    }
  }
  RC_ASSERT(matching.cost == cost);
  RC_ASSERT(matching.twice_bound == 2 * cost);
}

TEST(WeightedMatching, EqualsTryingEverything) {
  EXPECT_TRUE(rc::check([] {
    const int size = 2 * *rc::gen::inRange(0, 6);
    const CostTable costs = random_costs(size, *rc::gen::element(2, 5, 40, 100000), *rc::gen::inRange(2, 11));
    const auto found = cheapest_perfect_matching(costs);
    const std::int64_t best = try_everything(costs, 0);
    RC_ASSERT(found.has_value() == (best != kUnpaired));
    if (!found) return;
    RC_ASSERT(found->cost == best);
    expect_proven(costs, *found);
  }));
}

TEST(WeightedMatching, CarriesItsProofAtFullSize) {
  EXPECT_TRUE(rc::check([] {
    const int size = 2 * *rc::gen::inRange(5, 30);
    const CostTable costs = random_costs(size, *rc::gen::element(2, 7, 50, 1000000), *rc::gen::inRange(1, 11));
    const auto found = cheapest_perfect_matching(costs);
    RC_ASSERT(found.has_value() == (2 * largest_matching(costs, 1000000) == size));
    if (found) expect_proven(costs, *found);
  }));
}

TEST(WeightedMatching, NeedsAnEvenNumber) {
  CostTable costs(3);
  costs.set(0, 1, 1);
  costs.set(1, 2, 1);
  EXPECT_FALSE(cheapest_perfect_matching(costs));
  EXPECT_TRUE(cheapest_perfect_matching(CostTable(0)));
}

// The reduced costs say which pairs can stand in a cheapest matching at all.
TEST(WeightedMatching, ReducedCostsRuleOutOnlyWhatIsNeverBest) {
  EXPECT_TRUE(rc::check([] {
    const int size = 2 * *rc::gen::inRange(1, 5);
    const CostTable costs = random_costs(size, 4, 9);
    const auto found = cheapest_perfect_matching(costs);
    if (!found) return;
    for (int u = 0; u < size; ++u) {
      for (int v = 0; v < u; ++v) {
        if (costs.at(u, v) == kNoEdge || found->reduced.at(u, v) == 0) continue;
        const std::int64_t rest = try_everything(costs, 1U << u | 1U << v);
        if (rest != kUnpaired) RC_ASSERT(rest + costs.at(u, v) > found->cost);
      }
    }
  }));
}

TEST(LeastThreshold, IsTheSmallestThatStillPairsAll) {
  EXPECT_TRUE(rc::check([] {
    const int size = 2 * *rc::gen::inRange(1, 6);
    const CostTable costs = random_costs(size, 12, 8);
    if (try_everything(costs, 0) == kUnpaired) return;
    std::vector<std::int64_t> candidates;
    for (int most = 0; most < 12; ++most) candidates.push_back(most);
    std::int64_t expected = 0;
    for (std::int64_t most = 11; most >= 0; --most) {
      CostTable kept(size);
      for (int u = 0; u < size; ++u) {
        for (int v = 0; v < u; ++v) {
          if (costs.at(u, v) != kNoEdge && costs.at(u, v) <= most) kept.set(u, v, 0);
        }
      }
      if (try_everything(kept, 0) != kUnpaired) expected = most;
    }
    RC_ASSERT(least_threshold(costs, candidates) == expected);
  }));
}

}  // namespace
}  // namespace lanework::people
