// A negative binomial model of counts with a normal effect of the squad on the log rate, fitted by maximum likelihood
// with Laplace's method: for counts that vary more from week to week than chance.
#pragma once

#include <vector>

#include "core/evidence/mixed/fit_judged.h"
#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/random_effect.h"

namespace lanework::evidence {

struct Nb2Fit {
  std::vector<double> coefficients;
  double size = 0;             // the variance of a count is mean + mean^2 / size; infinite: no more than chance
  double squad_deviation = 0;  // of the effects; 0: none is to be seen
  double log_likelihood = 0;
  std::vector<RandomEffect> squad_effects;
  // Of the coefficients, the logarithm of the size and, unless it is 0, that of the deviation.
  Judged judged;
};

// REQUIRES: columns that are not a sum of others, an event at least.
Nb2Fit fit_nb2(const Frame& frame);
// Without effects of squads.
Nb2Fit fit_nb2_alone(const Frame& frame);

}  // namespace lanework::evidence
