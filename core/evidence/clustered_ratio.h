// Two arms of squads compared as squads: what happens in one squad hangs together, so that the squads count, not the
// hours. Each arm's rate is all its events by all its hours; how far it may be off is seen from how its squads differ
// (ratio estimator, as in Hayes RJ, Moulton LH, Cluster Randomised Trials, 2nd ed. 2017; from memory). The interval is
// on the log scale, by Student's t with squads less two degrees of freedom.
#pragma once

#include <cstdint>
#include <span>

#include "core/evidence/rate_ratio.h"

namespace lanework::evidence {

struct ClusteredRatio {
  double ratio = 0;
  double error = 0;  // of its logarithm
  int degrees = 0;
  Tested tested;
  // The variance of the log ratio by the one that events would have by themselves: what clustering costs.
  double variance_factor = 1;
};

// REQUIRES: two squads and an event at least in each arm; squads of one arm not all of the same rate in both arms.
ClusteredRatio clustered_ratio(std::span<const Exposed> one, std::span<const Exposed> other, double level);

}  // namespace lanework::evidence
