// What the sets of a block must keep, and what changing them costs, whatever the sessions do.
#pragma once

#include "core/block/problem.h"

namespace lanework::block {

// Drills that come in at the start of the spell.
int coming_in(const Problem& problem, const Sets& sets, std::size_t spell);
// Do they keep the sizes of families, what is fixed, and the most and least that may come in? Spells that are over are
// as they were.
bool keeps_set_limits(const Problem& problem, const Sets& sets);
// What the drills that come in cost.
Points swap_cost(const Problem& problem, const Sets& sets);

}  // namespace lanework::block
