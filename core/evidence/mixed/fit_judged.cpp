#include "core/evidence/mixed/fit_judged.h"

#include <Eigen/Dense>
#include <cmath>

namespace lanework::evidence {

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

double Judged::error(std::size_t parameter) const {
  const auto parameters = static_cast<std::size_t>(std::llround(std::sqrt(static_cast<double>(covariance.size()))));
  return std::sqrt(covariance[parameter * parameters + parameter]);
}

Judged judge(const Highest& highest) {
  const auto count = static_cast<Eigen::Index>(highest.at.size());
  const Matrix down = -Eigen::Map<const Matrix>(highest.value.hessian.data(), count, count);
  const Eigen::VectorXd scale = down.diagonal().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
  const Matrix scaled = scale.asDiagonal() * down * scale.asDiagonal();
  Judged out;
  out.least_bend = Eigen::SelfAdjointEigenSolver<Matrix>(scaled, Eigen::EigenvaluesOnly).eigenvalues()(0);
  out.converged = highest.converged;
  out.left_to_gain = highest.left_to_gain;
  out.steps = highest.steps;
  out.evaluations = highest.evaluations;
  const Matrix inverse = scale.asDiagonal() * Matrix(scaled.inverse()) * scale.asDiagonal();
  out.covariance.assign(inverse.data(), inverse.data() + inverse.size());
  return out;
}

}  // namespace lanework::evidence
