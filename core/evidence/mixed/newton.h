// The highest point of a function that is known with its first and second derivatives.
#pragma once

#include <functional>
#include <vector>

#include "core/evidence/mixed/objective_value.h"

namespace lanework::evidence {

struct Highest {
  std::vector<double> at;
  ObjectiveValue value;
  int steps = 0;
  int evaluations = 0;  // of the function
  bool converged = false;
  // Of the log likelihood, that one more step is thought to bring.
  double left_to_gain = 0;
};

// Newton's method; where the function does not bend downwards the step is bent towards the slope, where it falls the
// step is halved.
Highest climb(const std::function<ObjectiveValue(const std::vector<double>&)>& function, std::vector<double> start);

}  // namespace lanework::evidence
