#include "core/evidence/mixed/nb2_fit.h"

#include <cmath>
#include <limits>
#include <optional>
#include <utility>

#include "core/evidence/mixed/first_coefficients.h"
#include "core/evidence/mixed/nb2_objective.h"
#include "core/evidence/mixed/poisson_fit.h"
#include "core/evidence/mixed/share_of_squads.h"

namespace lanework::evidence {
namespace {

constexpr double kFirstDeviation = 0.3;
constexpr double kLeastDeviation = 1e-4;
constexpr double kFirstSize = 2;
// Above this the counts vary no more than chance.
constexpr double kMostSize = 1e6;
// From so many squads on, the climb begins where that of a share of them ended.
constexpr std::size_t kManySquads = 400;
constexpr std::size_t kShare = 8;

std::vector<double> but_last(const std::vector<double>& at, std::size_t count) {
  return {at.begin(), at.end() - static_cast<std::ptrdiff_t>(count)};
}

class Fitting {
 public:
  explicit Fitting(const Frame& frame) : frame_(frame), objective_(frame) {}

  // squads_differ: they may, by themselves.
  Nb2Fit run(bool squads_differ) {
    if (squads_differ) {
      if (const std::optional<std::vector<double>> start = start_by_share()) {
        const Highest highest = climb_with_squads(*start);
        if (highest.converged && is_inside(highest)) return with_squads(highest);
      }
    }
    std::vector<double> start = first_coefficients(frame_);
    start.push_back(std::log(kFirstSize));
    const Highest without = climb(
        [&](const std::vector<double>& at) { return objective_.at(but_last(at, 1), at.back(), std::nullopt); }, start);
    count(without);
    if (squads_differ) {
      visited_ += frame_.rows();
      if (objective_.slope_at_no_effect(but_last(without.at, 1), without.at.back()) > 0) {
        start = without.at;
        start.push_back(std::log(kFirstDeviation));
        const Highest highest = climb_with_squads(start);
        if (std::exp(highest.at.back()) >= kLeastDeviation)
          return is_inside(highest) ? with_squads(highest) : as_poisson(squads_differ);
      }
    }
    if (std::exp(without.at.back()) > kMostSize) return as_poisson(squads_differ);
    Nb2Fit fit = fitted(without);
    fit.squad_effects.assign(frame_.squads(), {});
    return fit;
  }

 private:
  const Frame& frame_;
  Nb2Objective objective_;
  std::size_t visited_ = 0;
  int steps_ = 0;
  int evaluations_ = 0;

  void count(const Highest& climbed) {
    steps_ += climbed.steps;
    evaluations_ += climbed.evaluations;
    visited_ += static_cast<std::size_t>(climbed.evaluations) * frame_.rows();
  }

  std::optional<std::vector<double>> start_by_share() {
    if (frame_.squads() < kManySquads) return std::nullopt;
    Frame some = share_of_squads(frame_, kShare);
    some.club_ends.clear();
    const Nb2Fit share = Fitting(some).run(true);
    visited_ += share.judged.rows_visited;
    if (!share.judged.converged || share.squad_deviation == 0 || std::isinf(share.size)) return std::nullopt;
    std::vector<double> start = share.coefficients;
    start.push_back(std::log(share.size));
    start.push_back(std::log(share.squad_deviation));
    return start;
  }

  Highest climb_with_squads(const std::vector<double>& start) {
    Highest out = climb(
        [&](const std::vector<double>& at) { return objective_.at(but_last(at, 2), at[at.size() - 2], at.back()); },
        start);
    count(out);
    return out;
  }

  // Squads differ, and counts vary beyond chance.
  static bool is_inside(const Highest& with) {
    return std::exp(with.at.back()) >= kLeastDeviation && std::exp(with.at[with.at.size() - 2]) <= kMostSize;
  }

  Nb2Fit fitted(const Highest& highest) {
    Nb2Fit fit;
    const std::size_t columns = frame_.columns();
    fit.coefficients.assign(highest.at.begin(), highest.at.begin() + static_cast<std::ptrdiff_t>(columns));
    fit.size = std::exp(highest.at[columns]);
    fit.log_likelihood = highest.value.log_likelihood;
    fit.judged = judge(highest);
    fit.judged.steps = steps_;
    fit.judged.evaluations = evaluations_;
    fit.judged.rows_visited = visited_;
    return fit;
  }

  Nb2Fit with_squads(const Highest& highest) {
    visited_ += frame_.rows();
    Nb2Fit fit = fitted(highest);
    fit.squad_deviation = std::exp(highest.at.back());
    fit.squad_effects = objective_.effects(fit.coefficients, highest.at[frame_.columns()], highest.at.back());
    return fit;
  }

  Nb2Fit as_poisson(bool squads_differ) {
    PoissonFit poisson = squads_differ ? fit_poisson(frame_, 1) : fit_poisson_alone(frame_);
    return {std::move(poisson.coefficients), std::numeric_limits<double>::infinity(), poisson.squad_deviation,
            poisson.log_likelihood,          std::move(poisson.squad_effects),        std::move(poisson.judged)};
  }
};

}  // namespace

Nb2Fit fit_nb2(const Frame& frame) { return Fitting(frame).run(true); }
Nb2Fit fit_nb2_alone(const Frame& frame) { return Fitting(frame).run(false); }

}  // namespace lanework::evidence
