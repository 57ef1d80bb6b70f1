// The log likelihood of a Poisson model with effects of the squad and of the club it belongs to, by Laplace's method,
// and its first and second derivatives.
//
// Work a call: rows x (one exponential + columns^2 / 2), squads x columns^2.
#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <vector>

#include "core/evidence/mixed/frame_constants.h"
#include "core/evidence/mixed/objective_value.h"
#include "core/evidence/mixed/random_effect.h"
#include "core/evidence/mixed/squad_rows.h"

namespace lanework::evidence {

class NestedObjective {
 public:
  // REQUIRES: a frame with clubs.
  explicit NestedObjective(const Frame& frame);

  // Parameters: the coefficients, then the logarithms of the squads' and the clubs' standard deviations.
  [[nodiscard]] ObjectiveValue at(const std::vector<double>& coefficients, double log_squad_deviation,
                                  double log_club_deviation) const;
  // Half of what the log likelihood would gain for each unit of the clubs' variance, where there is none yet.
  [[nodiscard]] double slope_at_no_clubs(const std::vector<double>& coefficients, double log_squad_deviation) const;
  struct Effects {
    std::vector<RandomEffect> squads;  // beside their club's
    std::vector<RandomEffect> clubs;
  };
  [[nodiscard]] Effects effects(const std::vector<double>& coefficients, double log_squad_deviation,
                                double log_club_deviation) const;

 private:
  std::vector<std::size_t> club_ends_;
  FrameConstants constants_;
  SquadRows rows_;

  // Of the squads from 'first' to before 'end'.
  [[nodiscard]] Eigen::Map<const Eigen::ArrayXd> events(std::size_t first, std::size_t end) const {
    return {constants_.squad_events.data() + first, static_cast<Eigen::Index>(end - first)};
  }
};

}  // namespace lanework::evidence
