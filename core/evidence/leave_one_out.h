// Limits of a figure that many squads, or players, make together, from how far it moves as each of them is left out:
// the jackknife (Tukey JW, Ann Math Stat 1958, 29:614; from memory), with Student's t of one degree less than squads.
// What happens in one squad hangs together; this needs no model of how. It leans to the wide side, the more so the
// fewer squads there are.
#pragma once

#include <span>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct LeftOut {
  double error = 0;
  int degrees = 0;
  Interval limits;
};

// without: the figure without each, on a scale where it is about normal: the logarithm of a ratio or of a share.
// REQUIRES: two at least, all finite.
LeftOut limits_by_leaving_out(double figure, std::span<const double> without, double level);

}  // namespace lanework::evidence
