// What squads add to the log likelihood of a Poisson model whose squads differ by a normal effect on the log rate, by
// Laplace's method: many squads at once, their derivatives by formula. One squad by any rule: squad_term.h.
#pragma once

#include <Eigen/Core>

namespace lanework::evidence {

// By squad; derivatives in the logarithm of its expected events and in that of the effects' standard deviation.
struct SquadTerms {
  Eigen::ArrayXd log_likelihood;  // less what does not depend on the effect
  Eigen::ArrayXd by_expected;
  Eigen::ArrayXd by_expected_twice;
  Eigen::ArrayXd by_deviation;
  Eigen::ArrayXd by_both;
  Eigen::ArrayXd by_deviation_twice;
  Eigen::ArrayXd mode;      // of the effect
  Eigen::ArrayXd variance;  // of the effect given the counts, by its curvature there
};

// Where events x z - expected x exp(z) - z^2 / (2 variance) is highest, by squad.
Eigen::ArrayXd squad_modes(const Eigen::Ref<const Eigen::ArrayXd>& events,
                           const Eigen::Ref<const Eigen::ArrayXd>& expected, double variance);

// events, expected (without effect): by squad.
SquadTerms laplace_terms(const Eigen::Ref<const Eigen::ArrayXd>& events,
                         const Eigen::Ref<const Eigen::ArrayXd>& expected, double log_deviation);

}  // namespace lanework::evidence
