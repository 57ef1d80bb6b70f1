// Where a squad's rate may lie by chance alone, by how many events were to be expected of it: the two pairs of lines of
// a funnel plot. Exact limits, made smooth between whole counts (Spiegelhalter DJ, Stat Med 2005, doi 10.1002/sim.1970;
// the formula from memory).
#pragma once

#include <span>

#include "core/evidence/gamma_poisson.h"

namespace lanework::evidence {

// The ratio of observed to expected that a share of squads stays below by chance, where 'expected' events are to be
// expected; 0 where even no event at all is likelier than the share. REQUIRES: expected > 0, 0 < share < 1.
double funnel_limit(double expected, double share);

// How much more squads differ than by chance alone: the mean squared score 2 (sqrt(observed) - sqrt(expected)) once the
// tenth at either end is drawn in to the next (the same paper; from memory).
struct OverDispersion {
  double factor = 1;  // of the variance
  // It is more than chance would make of squads that are all alike: then limits are widened by it.
  bool beyond_chance = false;
};
// REQUIRES: two squads, expected > 0 each.
OverDispersion over_dispersion(std::span<const SquadCount> squads);

// The limit as it is drawn: widened about 1 where squads differ by more than chance.
double widened_limit(double expected, double share, const OverDispersion& dispersion);

}  // namespace lanework::evidence
