// Two rates compared within strata and put together again: squads, ages, sexes, or training and matches.
//
// Mantel and Haenszel's ratio and difference for person-time, with the variances of Greenland S, Robins JM, Biometrics
// 1985, doi 10.2307/2530643 (as in Rothman KJ, Epidemiology: An Introduction, 2nd ed. 2012; from memory).
#pragma once

#include <span>

#include "core/evidence/interval.h"
#include "core/evidence/rate_ratio.h"

namespace lanework::evidence {

struct Stratum {
  Exposed one;
  Exposed other;
};

struct Pooled {
  double estimate = 0;  // of the ratio; of the difference per hour
  double error = 0;     // of the ratio's logarithm; of the difference
  Interval limits;
};

// REQUIRES: an event in each arm of some stratum that has hours in both.
Pooled mantel_haenszel_ratio(std::span<const Stratum> strata, double level);
Pooled mantel_haenszel_difference(std::span<const Stratum> strata, double level);

// Do the strata's ratios differ by more than chance? Chi-squared with one degree less than strata that have events in
// both arms (Cochran's Q around the inverse-variance mean of the log ratios).
struct Heterogeneity {
  double chi_squared = 0;
  int degrees = 0;
  double p = 1;
};
Heterogeneity heterogeneity(std::span<const Stratum> strata);

// Log ratios of trials or squads put together as draws from a distribution of effects (DerSimonian R, Laird N, Control
// Clin Trials 1986, doi 10.1016/0197-2456(86)90046-2).
struct RandomEffects {
  Pooled ratio;
  double between_variance = 0;   // of the log ratio
  double share_of_variance = 0;  // I squared, 0 .. 1
};
// REQUIRES: events in both arms of every stratum.
RandomEffects random_effects_ratio(std::span<const Stratum> strata, double level);

}  // namespace lanework::evidence
