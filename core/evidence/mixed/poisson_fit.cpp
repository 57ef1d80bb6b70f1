#include "core/evidence/mixed/poisson_fit.h"

#include <Eigen/Dense>
#include <cmath>

#include "core/evidence/mixed/newton.h"

namespace lanework::evidence {
namespace {

constexpr double kFirstDeviation = 0.3;
// A deviation below this is none.
constexpr double kLeastDeviation = 1e-4;

using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

// Every row the same rate.
std::vector<double> first_coefficients(const Frame& frame) {
  double events = 0;
  double hours = 0;
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    events += frame.events[row];
    hours += std::exp(frame.log_hours[row]);
  }
  std::vector<double> out(frame.columns(), 0);
  // The first column that is 1 in every row carries it.
  for (std::size_t c = 0; c < frame.columns(); ++c) {
    bool constant = true;
    for (std::size_t row = 0; row < frame.rows() && constant; ++row)
      constant = frame.design[row * frame.columns() + c] == 1;
    if (!constant) continue;
    out[c] = std::log(events / hours);
    break;
  }
  return out;
}

void judge(const Highest& highest, PoissonFit& fit) {
  const auto count = static_cast<Eigen::Index>(highest.at.size());
  const Matrix down = -Eigen::Map<const Matrix>(highest.value.hessian.data(), count, count);
  const Eigen::VectorXd scale = down.diagonal().cwiseMax(1e-300).cwiseSqrt().cwiseInverse();
  const Matrix scaled = scale.asDiagonal() * down * scale.asDiagonal();
  fit.least_bend = Eigen::SelfAdjointEigenSolver<Matrix>(scaled, Eigen::EigenvaluesOnly).eigenvalues()(0);
  fit.converged = highest.converged;
  fit.left_to_gain = highest.left_to_gain;
  fit.steps += highest.steps;
  fit.log_likelihood = highest.value.log_likelihood;
  const Matrix inverse = scale.asDiagonal() * Matrix(scaled.inverse()) * scale.asDiagonal();
  fit.covariance.assign(inverse.data(), inverse.data() + inverse.size());
}

}  // namespace

double PoissonFit::error(std::size_t parameter) const {
  const auto parameters = static_cast<std::size_t>(std::llround(std::sqrt(static_cast<double>(covariance.size()))));
  return std::sqrt(covariance[parameter * parameters + parameter]);
}

PoissonFit fit_poisson(const Frame& frame, int points) {
  const PoissonObjective objective(frame, points);
  PoissonFit fit;
  const Highest without =
      climb([&](const std::vector<double>& at) { return objective.at(at, std::nullopt); }, first_coefficients(frame));
  const auto no_effect = [&] {
    fit.at_boundary = true;
    fit.deviation = 0;
    fit.coefficients = without.at;
    judge(without, fit);
    fit.effects.assign(frame.squads(), {});
  };
  if (objective.slope_at_no_effect(without.at) <= 0) {
    no_effect();
    return fit;
  }
  fit.steps = without.steps;
  std::vector<double> start = without.at;
  start.push_back(std::log(kFirstDeviation));
  const auto split = [&](const std::vector<double>& at) { return objective.at({at.begin(), at.end() - 1}, at.back()); };
  const Highest highest = climb(split, start);
  if (std::exp(highest.at.back()) < kLeastDeviation) {
    no_effect();
    return fit;
  }
  fit.coefficients.assign(highest.at.begin(), highest.at.end() - 1);
  fit.deviation = std::exp(highest.at.back());
  judge(highest, fit);
  fit.effects = objective.effects(fit.coefficients, highest.at.back());
  return fit;
}

}  // namespace lanework::evidence
