#include "core/evidence/mixed/poisson_fit.h"

#include <cmath>
#include <optional>
#include <utility>

#include "core/evidence/mixed/first_coefficients.h"
#include "core/evidence/mixed/nested_objective.h"
#include "core/evidence/mixed/newton.h"
#include "core/evidence/mixed/poisson_objective.h"
#include "core/evidence/mixed/share_of_squads.h"

namespace lanework::evidence {
namespace {

constexpr double kFirstDeviation = 0.3;
// A deviation below this is none.
constexpr double kLeastDeviation = 1e-4;
// From so many squads on, the climb begins where that of a share of them ended.
constexpr std::size_t kManySquads = 400;
constexpr std::size_t kManyClubs = 80;
constexpr std::size_t kShare = 8;

class Fitting {
 public:
  Fitting(const Frame& frame, int points) : frame_(frame), objective_(frame, points) {}

  PoissonFit run() {
    if (const std::optional<std::vector<double>> start = start_by_share();
        start && climb_with_squads(*start) && fit_.judged.converged)
      return std::move(fit_);
    const Highest without = climb_alone();
    visited_ += frame_.rows();
    if (objective_.slope_at_no_effect(without.at) > 0) {
      std::vector<double> start = without.at;
      start.push_back(std::log(kFirstDeviation));
      if (climb_with_squads(start)) return std::move(fit_);
    }
    return no_squads(without);
  }

  PoissonFit run_alone() { return no_squads(climb_alone()); }

 private:
  const Frame& frame_;
  PoissonObjective objective_;
  PoissonFit fit_;
  std::size_t visited_ = 0;
  int steps_ = 0;
  int evaluations_ = 0;

  void count(const Highest& climbed) {
    steps_ += climbed.steps;
    evaluations_ += climbed.evaluations;
    visited_ += static_cast<std::size_t>(climbed.evaluations) * frame_.rows();
  }

  void finish(const Highest& highest) {
    fit_.judged = judge(highest);
    fit_.judged.steps = steps_;
    fit_.judged.evaluations = evaluations_;
    fit_.judged.rows_visited = visited_;
    fit_.log_likelihood = highest.value.log_likelihood;
  }

  std::optional<std::vector<double>> start_by_share() {
    if (frame_.squads() < kManySquads) return std::nullopt;
    Frame some = share_of_squads(frame_, kShare);
    some.club_ends.clear();
    const PoissonFit share = Fitting(some, 1).run();
    visited_ += share.judged.rows_visited;
    if (!share.judged.converged || share.squad_deviation == 0) return std::nullopt;
    std::vector<double> start = share.coefficients;
    start.push_back(std::log(share.squad_deviation));
    return start;
  }

  Highest climb_alone() {
    Highest out = climb([&](const std::vector<double>& at) { return objective_.at(at, std::nullopt); },
                        first_coefficients(frame_));
    count(out);
    return out;
  }

  PoissonFit no_squads(const Highest& without) {
    fit_.squad_deviation = 0;
    fit_.coefficients = without.at;
    finish(without);
    fit_.squad_effects.assign(frame_.squads(), {});
    return std::move(fit_);
  }

  bool climb_with_squads(const std::vector<double>& start) {
    const Highest highest = climb(
        [&](const std::vector<double>& at) {
          return objective_.at({at.begin(), at.end() - 1}, at.back());
        },
        start);
    count(highest);
    if (std::exp(highest.at.back()) < kLeastDeviation) return false;
    fit_.coefficients.assign(highest.at.begin(), highest.at.end() - 1);
    fit_.squad_deviation = std::exp(highest.at.back());
    visited_ += frame_.rows();
    fit_.squad_effects = objective_.effects(fit_.coefficients, highest.at.back());
    finish(highest);
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

// At a top of the squads' and the clubs' deviations, neither of them at the edge.
std::optional<PoissonFit> climb_with_clubs(const Frame& frame, const NestedObjective& objective,
                                           const std::vector<double>& start) {
  const Highest highest = climb(
      [&](const std::vector<double>& at) {
        return objective.at({at.begin(), at.end() - 2}, at[at.size() - 2], at.back());
      },
      start);
  const double log_squads = highest.at[highest.at.size() - 2];
  const double log_clubs = highest.at.back();
  if (std::exp(log_clubs) < kLeastDeviation) return std::nullopt;
  PoissonFit fit;
  fit.coefficients.assign(highest.at.begin(), highest.at.end() - 2);
  fit.squad_deviation = std::exp(log_squads);
  fit.club_deviation = std::exp(log_clubs);
  fit.judged = judge(highest);
  fit.judged.rows_visited = static_cast<std::size_t>(highest.evaluations + 1) * frame.rows();
  fit.log_likelihood = highest.value.log_likelihood;
  NestedObjective::Effects effects = objective.effects(fit.coefficients, log_squads, log_clubs);
  fit.squad_effects = std::move(effects.squads);
  fit.club_effects = std::move(effects.clubs);
  return fit;
}

PoissonFit fit_nested(const Frame& frame) {
  const NestedObjective objective(frame);
  std::size_t visited = 0;
  if (frame.squads() >= kManySquads && frame.club_ends.size() >= kManyClubs) {
    const PoissonFit share = fit_nested(share_of_squads(frame, kShare));
    visited = share.judged.rows_visited;
    if (share.judged.converged && share.squad_deviation > 0 && share.club_deviation > 0) {
      std::vector<double> start = share.coefficients;
      start.push_back(std::log(share.squad_deviation));
      start.push_back(std::log(share.club_deviation));
      std::optional<PoissonFit> fit = climb_with_clubs(frame, objective, start);
      if (fit && fit->judged.converged && fit->squad_deviation >= kLeastDeviation) {
        fit->judged.rows_visited += visited;
        return *std::move(fit);
      }
    }
  }
  PoissonFit squads = Fitting(frame, 1).run();
  squads.club_effects.assign(frame.club_ends.size(), {});
  squads.judged.rows_visited += visited;
  if (squads.squad_deviation == 0) {
    // Squads differ no more than chance: what is left are the clubs.
    PoissonFit clubs = Fitting(clubs_as_squads(frame), 1).run();
    clubs.club_deviation = std::exchange(clubs.squad_deviation, 0);
    clubs.club_effects = std::exchange(clubs.squad_effects, std::vector<RandomEffect>(frame.squads()));
    return clubs;
  }
  squads.judged.rows_visited += frame.rows();
  const double log_squads = std::log(squads.squad_deviation);
  if (objective.slope_at_no_clubs(squads.coefficients, log_squads) <= 0) return squads;
  std::vector<double> start = squads.coefficients;
  start.push_back(log_squads);
  start.push_back(std::log(kFirstDeviation));
  std::optional<PoissonFit> fit = climb_with_clubs(frame, objective, start);
  if (!fit) return squads;
  fit->judged.steps += squads.judged.steps;
  fit->judged.evaluations += squads.judged.evaluations;
  fit->judged.rows_visited += squads.judged.rows_visited;
  return *std::move(fit);
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
