// The best block found and a proof of how good it is. Method: docs/model/block.md.
#pragma once

#include <cstdint>
#include <functional>

#include "core/block/problem.h"

namespace lanework::block {

// Work is counted, so that the answer is the same on any machine and any number of threads.
struct Work {
  int rounds = 400;              // of prices
  std::int64_t set_moves = 200;  // search.h
  int sets_ranked = 16;          // sets whose own bound is looked at
  int rounds_to_rank = 12;       // of prices, for each
  int sets_tried = 3;            // the best few sets that are worked out
  int rounds_of_sets = 120;      // of prices with the sets given
  std::int64_t session_moves = 1000;
  std::int64_t drill_moves = 100'000;
};

struct Answer {
  Plan plan;
  bool feasible = false;  // false: no plan that keeps every row was found; 'plan' is the nearest
  Points value = 0;
  std::int64_t bound_fine = 0;  // no plan is worth more than this many fine points (1/256)
  int rounds = 0;
  // What the prices say: points that one more step of each session's slot is worth are found by solving
  // again; these only tell where to look.
  std::vector<double> prices;
};

// (bound - value) / bound in ten-thousandths, rounded up; 0 where the bound is 0.
int gap_ten_thousandths(const Answer& answer);

// No plan is worth more than this, in whole points.
Points bound_points(const Answer& answer);

// Called now and then with the share of the work done, 0 .. 1; false stops early with what there is.
using Progress = std::function<bool(double)>;

Answer solve(const Problem& problem, const Work& work, std::uint64_t seed, const Progress& progress = {});

}  // namespace lanework::block
