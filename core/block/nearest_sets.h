// From the sets that the prices wish for to sets that keep every limit on them.
#pragma once

#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

using Sets = std::vector<std::vector<char>>;  // as Plan::sets

// How much the prices lean to a drill being of a spell's set, 0 .. 1, [spell][drill].
using Leaning = std::vector<std::vector<double>>;

// Those nearest to the wished ones that keep the size of a set and the swaps between spells; what is leant to most
// comes in first, what is leant to least leaves first.
Sets nearest_sets(const Problem& problem, const Leaning& leaning, const Sets& wished);

}  // namespace lanework::block
