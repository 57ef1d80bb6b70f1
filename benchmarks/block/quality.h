// How good the blocks of the fixed set are, how soon, and whether time binds in them.
#pragma once

#include <vector>

#include "benchmarks/block/squads.h"

namespace lanework::bench {

// Solves the set with the work that is the default, and with that which buys more; prints both against the aims.
// Answers: those of the default.
std::vector<SolvedSquad> measure_quality(int squads);

// In how many squad-weeks one more minute for each of the week's sessions raises the value. False: too few.
bool time_binds(const std::vector<SolvedSquad>& squads);

}  // namespace lanework::bench
