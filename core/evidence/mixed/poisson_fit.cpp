#include "core/evidence/mixed/poisson_fit.h"

#include <Eigen/Dense>
#include <cmath>
#include <utility>

#include "core/evidence/mixed/nested_objective.h"
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

namespace {

class Fitting {
 public:
  Fitting(const Frame& frame, int points) : frame_(frame), objective_(frame, points) {}

  PoissonFit run() {
    without_ = climb([&](const std::vector<double>& at) { return objective_.at(at, std::nullopt); },
                     first_coefficients(frame_));
    if (!fit_squads()) no_squads();
    return std::move(fit_);
  }

 private:
  const Frame& frame_;
  PoissonObjective objective_;
  Highest without_;
  PoissonFit fit_;

  void no_squads() {
    fit_.squad_deviation = 0;
    fit_.coefficients = without_.at;
    judge(without_, fit_);
    fit_.squad_effects.assign(frame_.squads(), 0);
  }

  bool fit_squads() {
    if (objective_.slope_at_no_effect(without_.at) <= 0) return false;
    std::vector<double> start = without_.at;
    start.push_back(std::log(kFirstDeviation));
    const Highest highest = climb(
        [&](const std::vector<double>& at) {
          return objective_.at({at.begin(), at.end() - 1}, at.back());
        },
        start);
    fit_.steps = without_.steps;
    if (std::exp(highest.at.back()) < kLeastDeviation) return false;
    fit_.coefficients.assign(highest.at.begin(), highest.at.end() - 1);
    fit_.squad_deviation = std::exp(highest.at.back());
    judge(highest, fit_);
    for (const SquadEffect& effect : objective_.effects(fit_.coefficients, highest.at.back()))
      fit_.squad_effects.push_back(effect.mode);
    return true;
  }
};

// The same rows with every club as one squad.
Frame clubs_as_squads(const Frame& frame) {
  Frame out = frame;
  out.club_ends.clear();
  out.squad_ends.clear();
  for (const std::size_t end : frame.club_ends) out.squad_ends.push_back(frame.squad_ends[end - 1]);
  return out;
}

PoissonFit fit_nested(const Frame& frame) {
  PoissonFit squads = Fitting(frame, 1).run();
  squads.club_effects.assign(frame.club_ends.size(), 0);
  const NestedObjective objective(frame);
  if (squads.squad_deviation == 0) {
    // Squads differ no more than chance: what is left are the clubs.
    PoissonFit clubs = Fitting(clubs_as_squads(frame), 1).run();
    clubs.club_deviation = std::exchange(clubs.squad_deviation, 0);
    clubs.club_effects = std::exchange(clubs.squad_effects, std::vector<double>(frame.squads(), 0));
    return clubs;
  }
  const double log_squads = std::log(squads.squad_deviation);
  if (objective.slope_at_no_clubs(squads.coefficients, log_squads) <= 0) return squads;
  std::vector<double> start = squads.coefficients;
  start.push_back(log_squads);
  start.push_back(std::log(kFirstDeviation));
  const Highest highest = climb(
      [&](const std::vector<double>& at) {
        return objective.at({at.begin(), at.end() - 2}, at[at.size() - 2], at.back());
      },
      start);
  if (std::exp(highest.at.back()) < kLeastDeviation) return squads;
  PoissonFit fit;
  fit.steps = squads.steps;
  fit.coefficients.assign(highest.at.begin(), highest.at.end() - 2);
  fit.squad_deviation = std::exp(highest.at[highest.at.size() - 2]);
  fit.club_deviation = std::exp(highest.at.back());
  judge(highest, fit);
  NestedObjective::Effects effects =
      objective.effects(fit.coefficients, highest.at[highest.at.size() - 2], highest.at.back());
  fit.squad_effects = std::move(effects.squads);
  fit.club_effects = std::move(effects.clubs);
  return fit;
}

}  // namespace

PoissonFit fit_poisson(const Frame& frame, int points) {
  return frame.club_ends.empty() ? Fitting(frame, points).run() : fit_nested(frame);
}

}  // namespace lanework::evidence
