// The chance to see an effect, by playing the comparison many times over: squads' true rates drawn, their events drawn,
// and the arms compared as squads (clustered_ratio.h).
#pragma once

#include <cstdint>

#include "core/evidence/interval.h"
#include "core/evidence/power.h"

namespace lanework::evidence {

struct PlayedDesign {
  ClusterDesign design;   // matched is not played; rates of squads are log-normal about the arm's
  int squads_an_arm = 2;  // >= 2
  int times = 2000;       // that it is played
  std::uint64_t seed = 0;
};

struct PlayedPower {
  double power = 0;  // the share of times whose interval left out 1
  Interval limits;   // of that share, by chance of the draws (95 %)
  int too_few = 0;   // times with an arm without any event: counted as not seen
};

PlayedPower power_by_simulation(const PlayedDesign& played, double level);

}  // namespace lanework::evidence
