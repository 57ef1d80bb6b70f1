// Feasible plans: sessions solved again at prices between their true margins and those of the bound, sets changed
// drill by drill, then annealing over doses and uses with every sum kept up to date. Work is counted in moves,
// never by the clock; the same seed gives the same plan.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "core/block/nearest_sets.h"
#include "core/block/problem.h"

namespace lanework::block {

// What the prices of the bound tell the search, in points.
struct Guide {
  std::vector<std::vector<double>> credit;       // [session][family]: a quarter-credit
  std::vector<std::array<double, kLoads>> load;  // [session]: a unit of load
};

struct SessionEffort {
  std::int64_t session_moves = 0;  // one session solved again
  std::int64_t drill_moves = 0;    // one option changed, or two
};

struct Found {
  Plan plan;
  Points value = 0;
  bool feasible = false;
};

// A plan for each start, the best first, with the best one's sets changed as long as that helps. A set move lets one
// drill in for another and solves every session of the spells it touches again.
std::vector<Found> search_sets(const Problem& problem, const std::vector<Sets>& starts, const Guide& guide,
                               std::int64_t set_moves);

// The best plan met with the sets of 'start'. What 'start' breaks is mended first.
Found search_sessions(const Problem& problem, const Plan& start, const Guide& guide, const SessionEffort& effort,
                      std::uint64_t seed);

}  // namespace lanework::block
