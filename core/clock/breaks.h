// Where the evening's breaks stand: at the gaps between drills that are nearest to parts of equal length.
#pragma once

#include <vector>

#include "core/base/units.h"

namespace lanework::clock {

// parts: what each drill takes, with the change before it. How many breaks stand before each of them: none before the
// first, several in one gap where there are fewer gaps than breaks; all before a single drill. Ties to the earlier gap.
std::vector<int> breaks_before(const std::vector<Seconds>& parts, int count);

}  // namespace lanework::clock
