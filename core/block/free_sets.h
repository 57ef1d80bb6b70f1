// Where the first set may be composed freely, or in more ways than can be listed: what each spell would like if it
// were a block of its own, and what the block can be worth at the most. Method: docs/model/block.md.
#pragma once

#include <cstdint>
#include <vector>

#include "core/block/problem.h"
#include "core/block/solve.h"

namespace lanework::block {

// One spell as a block of its own, with no set before it but the routine, so that it is never worth less than in the
// block: 'swap' points are lost for each of its drills that is not of the routine.
Problem spell_alone(const Problem& problem, int spell, Points swap);

struct FreeSets {
  std::vector<std::vector<char>> wished;  // first sets worth a look
  std::int64_t bound_fine = INT64_MAX;    // no block is worth more; known for two spells only
};

FreeSets free_sets(const Problem& problem, const Work& work, const Progress& progress);

}  // namespace lanework::block
