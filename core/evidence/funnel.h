// Where a squad's rate may lie by chance alone, by how many events were to be expected of it: the two pairs of lines of
// a funnel plot. Exact limits, made smooth between whole counts (Spiegelhalter DJ, Stat Med 2005, doi 10.1002/sim.1970;
// the formula from memory).
#pragma once

namespace lanework::evidence {

// The ratio of observed to expected that a share of squads stays below by chance, where 'expected' events are to be
// expected; 0 where even no event at all is likelier than the share. REQUIRES: expected > 0, 0 < share < 1.
double funnel_limit(double expected, double share);

}  // namespace lanework::evidence
