// How many can be paired at all, and the smallest worst difference at which that many still can: maximum
// matchings by Boost.Graph.
#pragma once

#include <cstdint>
#include <vector>

#include "core/people/weighted_matching.h"

namespace lanework::people {

// Pairs in a largest matching of the edges up to most.
int largest_matching(const CostTable& differences, std::int64_t most);

// The least of the ascending candidates at which a perfect matching exists. REQUIRES: one exists at the last.
std::int64_t least_threshold(const CostTable& differences, const std::vector<std::int64_t>& candidates);

}  // namespace lanework::people
