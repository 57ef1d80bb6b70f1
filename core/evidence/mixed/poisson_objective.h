// The log likelihood of a Poisson model with an effect of the squad, and its first and second derivatives.
//
// Work a call: rows x (one exponential + columns^2 / 2).
#pragma once

#include <Eigen/Core>
#include <optional>
#include <vector>

#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/frame_constants.h"
#include "core/evidence/mixed/objective_value.h"
#include "core/evidence/mixed/quadrature.h"
#include "core/evidence/mixed/random_effect.h"
#include "core/evidence/mixed/squad_rows.h"

namespace lanework::evidence {

class PoissonObjective {
 public:
  // points: of the rule for the squads' effects, 1 for Laplace's method.
  PoissonObjective(const Frame& frame, int points);

  // log_deviation: of the squads' effects; empty: they have none.
  [[nodiscard]] ObjectiveValue at(const std::vector<double>& coefficients, std::optional<double> log_deviation) const;
  [[nodiscard]] std::vector<RandomEffect> effects(const std::vector<double>& coefficients, double log_deviation) const;
  // Half of what the log likelihood would gain for each unit of the effects' variance, where there is none yet: at or
  // below 0 no effect of the squads is to be seen.
  [[nodiscard]] double slope_at_no_effect(const std::vector<double>& coefficients) const;

 private:
  Quadrature rule_;
  FrameConstants constants_;
  SquadRows rows_;

  [[nodiscard]] Eigen::Map<const Eigen::ArrayXd> events() const {
    return {constants_.squad_events.data(), static_cast<Eigen::Index>(constants_.squad_events.size())};
  }
};

}  // namespace lanework::evidence
