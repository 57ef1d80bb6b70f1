#include "core/evidence/mixed/quadrature.h"

#include <Eigen/Eigenvalues>
#include <cmath>
#include <numbers>

namespace lanework::evidence {

Quadrature gauss_hermite(int count) {
  Eigen::VectorXd diagonal = Eigen::VectorXd::Zero(count);
  Eigen::VectorXd beside(std::max(0, count - 1));
  for (int k = 1; k < count; ++k) beside(k - 1) = std::sqrt(k / 2.0);
  Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver;
  solver.computeFromTridiagonal(diagonal, beside, Eigen::ComputeEigenvectors);
  Quadrature out;
  for (int k = 0; k < count; ++k) {
    const double point = solver.eigenvalues()(k);
    const double share = solver.eigenvectors()(0, k);
    out.points.push_back(point);
    out.log_weights.push_back(std::log(std::numbers::pi) / 2 + 2 * std::log(std::abs(share)) + point * point);
  }
  return out;
}

}  // namespace lanework::evidence
