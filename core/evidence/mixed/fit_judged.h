// How good a fit is as a fit, and what its parameters' errors are.
#pragma once

#include <cstddef>
#include <vector>

#include "core/evidence/mixed/newton.h"

namespace lanework::evidence {

struct Judged {
  std::vector<double> covariance;  // of the parameters, row by row
  bool converged = false;
  double left_to_gain = 0;  // of the log likelihood, by one more step
  double least_bend = 0;  // the least eigenvalue of its negative second derivatives, each scaled to 1: above 0 at a top
  int steps = 0;
  int evaluations = 0;           // of the log likelihood with its derivatives
  std::size_t rows_visited = 0;  // in all, an exponential each

  [[nodiscard]] double error(std::size_t parameter) const;
};

Judged judge(const Highest& highest);

}  // namespace lanework::evidence
