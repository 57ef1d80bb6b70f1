// Numbers of a device that are missing because their entries went by their time, or with the person whom they were
// about, are no gaps.
#pragma once

#include <vector>

#include "core/ledger/fold.h"

namespace lanework::ledger {

// What is left of 'gaps' without 'gone', by device and number; ranges of each may touch but do not overlap. O(n log n).
std::vector<Gap> gaps_without(std::vector<Gap> gaps, std::vector<Gap> gone);

}  // namespace lanework::ledger
