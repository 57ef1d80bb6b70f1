// Limits of the mean of a count that happens at a steady rate.
//
// Exact: each tail holds at most half of what the level leaves (Garwood F, Biometrika 1936,
// doi 10.1093/biomet/28.3-4.437); it covers at least the level, at small counts a good deal more. Mid-P: half of the
// count's own chance is taken off each tail; it covers the level on the average, at some means a little less. A count
// of 0 has the lower limit 0 in both, and only the upper tail's half of what the level leaves goes into its exact upper
// limit.
#pragma once

#include <cstdint>

#include "core/evidence/interval.h"

namespace lanework::evidence {

// REQUIRES: count >= 0, 0 < level < 1.
Interval exact_limits(std::int64_t count, double level);
Interval mid_p_limits(std::int64_t count, double level);

}  // namespace lanework::evidence
