// From the sets that the prices wish for to sets that keep every limit on them.
#pragma once

#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

// The set of a spell nearest to the wished one, after the set 'before': it has what is fixed, keeps the size of a set
// and makes no fewer and no more swaps. What is leant to most, 0 .. 1 by drill, comes in first, what is leant to least
// leaves first.
std::vector<char> nearest_set(const Problem& problem, std::size_t spell, const std::vector<double>& leaning,
                              std::vector<char> before, const std::vector<char>& wished, int least, int most);

}  // namespace lanework::block
