// The best block found and a proof of how good it is. Method: docs/model/block.md.
#pragma once

#include <cstdint>
#include <functional>

#include "core/block/problem.h"
#include "core/block/week_solver.h"

namespace lanework::block {

// Work is counted, so that the answer is the same on any machine and any number of threads.
struct Work {
  int first_rounds = 80;  // of prices, with nothing settled about the sets
  int split_rounds = 16;  // for each half of a part that is split
  int splits = 8;
  int more_splits = 40;         // while the gap is larger than 'far'
  int last_splits = 160;        // and then while it is larger than 'farther'
  int near = kNearGap;          // ten-thousandths: no more is done where the gap is as small
  int far = kFarGap;            // and leftover work goes to those where it is larger
  int farther = kFartherGap;    // most of it to those
  int ranking_rounds = 6;       // of a week's prices, to rank a swap
  int improvements = 4;         // passes over all swaps of the best sets
  int worked_out = 6;           // swaps of each pass that are worked out
  std::size_t first_sets = 64;  // of the first spell, listed at most
  WeekEffort week;
  // For the sets that stay, and those taken in the end.
  WeekEffort thorough{.rounds = 60, .splits = 12, .rounds_of_a_half = 12, .list_steps = 40'000, .joins = 60'000};
};

// So many times the usual work.
Work times(const Work& work, double times);

struct Answer {
  Plan plan;
  bool feasible = false;  // false: no plan that keeps every row was found; 'plan' is the nearest
  Points value = 0;
  std::int64_t bound_fine = 0;  // no plan is worth more than this many fine points (1/256)
  int rounds = 0;               // of prices
};

// (bound - value) / bound in ten-thousandths, rounded up; 0 where the bound is 0.
int gap_ten_thousandths(const Answer& answer);

// No plan is worth more than this, in whole points.
Points bound_points(const Answer& answer);

// Called now and then with the share of the work done, 0 .. 1; false stops early with what there is.
using Progress = std::function<bool(double)>;

Answer solve(const Problem& problem, const Work& work, const Progress& progress = {});

}  // namespace lanework::block
