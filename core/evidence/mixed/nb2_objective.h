// The log likelihood of a negative binomial model with an effect of the squad, by Laplace's method, and its first and
// second derivatives. The variance of a count is mean + mean^2 / size.
//
// Work a call: rows x (one exponential, a few divisions for each step to the mode, columns^2 / 2).
#pragma once

#include <optional>
#include <vector>

#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/objective_value.h"
#include "core/evidence/mixed/random_effect.h"

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
  const Frame& frame_;
  double factorials_ = 0;

  [[nodiscard]] std::size_t first_row(std::size_t squad) const { return squad == 0 ? 0 : frame_.squad_ends[squad - 1]; }
  void means_by_size(std::size_t squad, const std::vector<double>& coefficients, double log_size,
                     std::vector<double>& out) const;
  [[nodiscard]] RandomEffect mode_of(std::size_t squad, const std::vector<double>& means_by_size, double size,
                                     double variance) const;
};

}  // namespace lanework::evidence
