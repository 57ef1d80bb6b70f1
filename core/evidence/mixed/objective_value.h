// A log likelihood at a point, with its derivatives there.
#pragma once

#include <cstddef>
#include <vector>

namespace lanework::evidence {

struct ObjectiveValue {
  double log_likelihood = 0;
  std::vector<double> gradient;  // by parameter
  std::vector<double> hessian;   // [parameter x parameters + parameter], symmetric

  explicit ObjectiveValue(std::size_t parameters = 0) : gradient(parameters, 0), hessian(parameters * parameters, 0) {}
  // Of the lower triangle; mirror() fills the upper one.
  double& bend(std::size_t i, std::size_t j) { return hessian[i * gradient.size() + j]; }
  void mirror() {
    for (std::size_t i = 0; i < gradient.size(); ++i) {
      for (std::size_t j = i + 1; j < gradient.size(); ++j) bend(i, j) = bend(j, i);
    }
  }
};

}  // namespace lanework::evidence
