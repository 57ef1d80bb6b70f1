// The log likelihood of a negative binomial model with an effect of the squad, by Laplace's method, and its first and
// second derivatives. The variance of a count is mean + mean^2 / size.
//
// Work a call: rows x (one exponential, one logarithm, a division for each step to the mode, half the square of the
// columns that change within squads).
#pragma once

#include <optional>
#include <vector>

#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/frame_constants.h"
#include "core/evidence/mixed/objective_value.h"
#include "core/evidence/mixed/random_effect.h"
#include "core/evidence/mixed/squad_rows.h"

namespace lanework::evidence {

class Nb2Objective {
 public:
  explicit Nb2Objective(const Frame& frame);

  // Parameters: the coefficients, the logarithm of the size, and unless empty that of the effects' standard deviation.
  [[nodiscard]] ObjectiveValue at(const std::vector<double>& coefficients, double log_size,
                                  std::optional<double> log_deviation) const;
  [[nodiscard]] std::vector<RandomEffect> effects(const std::vector<double>& coefficients, double log_size,
                                                  double log_deviation) const;
  // Half of what the log likelihood would gain for each unit of the effects' variance, where there is none yet.
  [[nodiscard]] double slope_at_no_effect(const std::vector<double>& coefficients, double log_size) const;

 private:
  FrameConstants constants_;
  SquadRows rows_;
  std::vector<double> events_;      // by row
  std::vector<double> rows_above_;  // [count]: rows with more events

  [[nodiscard]] const double* events(std::size_t squad) const { return events_.data() + rows_.first(squad); }
  // Of the counts alone and the size: value, first and second derivative in its logarithm.
  struct OfSize {
    double value = 0;
    double first = 0;
    double second = 0;
  };
  [[nodiscard]] OfSize of_size(double size) const;
};

}  // namespace lanework::evidence
