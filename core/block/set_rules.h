// What the sets of a block must keep: drills that are fixed for a spell, how many of each family, and how many may come
// in at the start of a spell. docs/model/block.md, Constraints.
#pragma once

#include <vector>

#include "core/block/outline.h"
#include "core/block/problem.h"

namespace lanework::block {

// evening_of: by session of the problem, index into Outline::evenings. The problem has its drills, kinds and sessions;
// what is written: Drill::must, Family::drills, first_swaps, most_swaps and least_swaps.
void keep_set_rules(const Outline& outline, const std::vector<std::size_t>& evening_of, Problem& problem);

}  // namespace lanework::block
