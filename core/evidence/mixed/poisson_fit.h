// A Poisson model of counts with a normal effect of the squad on the log rate, fitted by maximum likelihood.
#pragma once

#include <vector>

#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/poisson_objective.h"

namespace lanework::evidence {

struct PoissonFit {
  std::vector<double> coefficients;  // in the order of the frame's columns
  std::vector<double> covariance;    // of the coefficients and, unless at the boundary, the log deviation; row by row
  double deviation = 0;              // of the squads' effects
  double log_likelihood = 0;
  std::vector<SquadEffect> effects;  // by squad
  // No effect of the squads is to be seen: the deviation is 0 and has no interval.
  bool at_boundary = false;
  // How it was judged.
  bool converged = false;
  double left_to_gain = 0;  // of the log likelihood, by one more step
  double least_bend = 0;  // the least eigenvalue of its negative second derivatives, each scaled to 1: above 0 at a top
  int steps = 0;

  [[nodiscard]] double error(std::size_t parameter) const;
};

// points: of the rule for the squads' effects, 1 for Laplace's method. REQUIRES: columns that are not a sum of others,
// an event at least.
PoissonFit fit_poisson(const Frame& frame, int points);

}  // namespace lanework::evidence
