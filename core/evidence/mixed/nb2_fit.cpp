#include "core/evidence/mixed/nb2_fit.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/evidence/mixed/first_coefficients.h"
#include "core/evidence/mixed/nb2_objective.h"
#include "core/evidence/mixed/poisson_fit.h"

namespace lanework::evidence {
namespace {

constexpr double kFirstDeviation = 0.3;
constexpr double kLeastDeviation = 1e-4;
constexpr double kFirstSize = 2;
// Above this the counts vary no more than chance.
constexpr double kMostSize = 1e6;

std::vector<double> but_last(const std::vector<double>& at, std::size_t count) {
  return {at.begin(), at.end() - static_cast<std::ptrdiff_t>(count)};
}

// squads_differ: they may, by themselves.
Nb2Fit fit_counts(const Frame& frame, bool squads_differ) {
  const Nb2Objective objective(frame);
  std::vector<double> start = first_coefficients(frame);
  start.push_back(std::log(kFirstSize));
  const Highest without = climb(
      [&](const std::vector<double>& at) { return objective.at(but_last(at, 1), at.back(), std::nullopt); }, start);
  Highest highest = without;
  if (squads_differ && objective.slope_at_no_effect(but_last(without.at, 1), without.at.back()) > 0) {
    start = without.at;
    start.push_back(std::log(kFirstDeviation));
    Highest with = climb(
        [&](const std::vector<double>& at) { return objective.at(but_last(at, 2), at[at.size() - 2], at.back()); },
        start);
    if (std::exp(with.at.back()) >= kLeastDeviation) {
      with.steps += without.steps;
      with.evaluations += without.evaluations;
      highest = std::move(with);
    }
  }
  const bool squads = highest.at.size() > without.at.size();
  const std::size_t columns = frame.columns();
  if (std::exp(highest.at[columns]) > kMostSize) {
    PoissonFit poisson = squads_differ ? fit_poisson(frame, 1) : fit_poisson_alone(frame);
    return {std::move(poisson.coefficients), std::numeric_limits<double>::infinity(), poisson.squad_deviation,
            poisson.log_likelihood,          std::move(poisson.squad_effects),        std::move(poisson.judged)};
  }
  Nb2Fit fit;
  fit.coefficients.assign(highest.at.begin(), highest.at.begin() + static_cast<std::ptrdiff_t>(columns));
  fit.size = std::exp(highest.at[columns]);
  fit.squad_deviation = squads ? std::exp(highest.at.back()) : 0;
  fit.log_likelihood = highest.value.log_likelihood;
  fit.squad_effects = squads ? objective.effects(fit.coefficients, highest.at[columns], highest.at.back())
                             : std::vector<RandomEffect>(frame.squads());
  fit.judged = judge(highest);
  return fit;
}

}  // namespace

Nb2Fit fit_nb2(const Frame& frame) { return fit_counts(frame, true); }
Nb2Fit fit_nb2_alone(const Frame& frame) { return fit_counts(frame, false); }

}  // namespace lanework::evidence
