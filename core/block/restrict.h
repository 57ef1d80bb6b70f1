// The problem with its sets given: only their drills are left, and the limits on sets are gone.
#pragma once

#include <vector>

#include "core/block/nearest_sets.h"
#include "core/block/problem.h"

namespace lanework::block {

struct Restricted {
  Problem problem;
  std::vector<std::size_t> drill_of;  // by drill of the restricted problem: its position in the whole one

  // A plan of the restricted problem as one of the whole, with the sets given, and the reverse.
  [[nodiscard]] Plan widened(const Plan& plan, const Sets& sets, std::size_t drills) const;
  [[nodiscard]] Plan narrowed(const Plan& plan) const;
};

// Values differ from those of the whole problem by what the swaps of the sets cost.
Restricted restrict_to(const Problem& problem, const Sets& sets);

}  // namespace lanework::block
