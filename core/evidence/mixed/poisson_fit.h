// A Poisson model of counts with a normal effect of the squad on the log rate, and where clubs are told one of the
// club, fitted by maximum likelihood.
#pragma once

#include <vector>

#include "core/evidence/mixed/fit_judged.h"
#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/random_effect.h"

namespace lanework::evidence {

struct PoissonFit {
  std::vector<double> coefficients;  // in the order of the frame's columns
  // Of the effects. 0: none is to be seen; then it has no interval.
  double squad_deviation = 0;
  double club_deviation = 0;
  double log_likelihood = 0;
  std::vector<RandomEffect> squad_effects;  // in the order of the frame
  std::vector<RandomEffect> club_effects;
  // Of the coefficients, then of the logarithms of those deviations that are not 0.
  Judged judged;
};

// points: of the rule for the squads' effects, 1 for Laplace's method. REQUIRES: columns that are not a sum of others,
// an event at least.
PoissonFit fit_poisson(const Frame& frame, int points);
// Without effects of squads or clubs.
PoissonFit fit_poisson_alone(const Frame& frame);

}  // namespace lanework::evidence
