#include "core/evidence/mixed/poisson_fit.h"

#include <cmath>
#include <utility>

#include "core/evidence/mixed/first_coefficients.h"
#include "core/evidence/mixed/nested_objective.h"
#include "core/evidence/mixed/newton.h"

namespace lanework::evidence {
namespace {

constexpr double kFirstDeviation = 0.3;
// A deviation below this is none.
constexpr double kLeastDeviation = 1e-4;

class Fitting {
 public:
  Fitting(const Frame& frame, int points) : frame_(frame), objective_(frame, points) {}

  PoissonFit run() {
    climb_alone();
    if (!fit_squads()) no_squads();
    return std::move(fit_);
  }

  PoissonFit run_alone() {
    climb_alone();
    no_squads();
    return std::move(fit_);
  }

 private:
  const Frame& frame_;
  PoissonObjective objective_;
  Highest without_;
  PoissonFit fit_;

  void climb_alone() {
    without_ = climb([&](const std::vector<double>& at) { return objective_.at(at, std::nullopt); },
                     first_coefficients(frame_));
  }

  void finish(const Highest& highest) {
    fit_.judged = judge(highest);
    fit_.log_likelihood = highest.value.log_likelihood;
  }

  void no_squads() {
    fit_.squad_deviation = 0;
    fit_.coefficients = without_.at;
    finish(without_);
    fit_.squad_effects.assign(frame_.squads(), {});
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
    if (std::exp(highest.at.back()) < kLeastDeviation) return false;
    fit_.coefficients.assign(highest.at.begin(), highest.at.end() - 1);
    fit_.squad_deviation = std::exp(highest.at.back());
    finish(highest);
    fit_.judged.steps += without_.steps;
    fit_.judged.evaluations += without_.evaluations;
    fit_.squad_effects = objective_.effects(fit_.coefficients, highest.at.back());
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
  squads.club_effects.assign(frame.club_ends.size(), {});
  const NestedObjective objective(frame);
  if (squads.squad_deviation == 0) {
    // Squads differ no more than chance: what is left are the clubs.
    PoissonFit clubs = Fitting(clubs_as_squads(frame), 1).run();
    clubs.club_deviation = std::exchange(clubs.squad_deviation, 0);
    clubs.club_effects = std::exchange(clubs.squad_effects, std::vector<RandomEffect>(frame.squads()));
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
  fit.coefficients.assign(highest.at.begin(), highest.at.end() - 2);
  fit.squad_deviation = std::exp(highest.at[highest.at.size() - 2]);
  fit.club_deviation = std::exp(highest.at.back());
  fit.judged = judge(highest);
  fit.judged.steps += squads.judged.steps;
  fit.judged.evaluations += squads.judged.evaluations;
  fit.log_likelihood = highest.value.log_likelihood;
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

PoissonFit fit_poisson_alone(const Frame& frame) {
  PoissonFit fit = Fitting(frame, 1).run_alone();
  fit.club_effects.assign(frame.club_ends.size(), {});
  return fit;
}

}  // namespace lanework::evidence
