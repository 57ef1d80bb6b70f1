// What one club adds to the log likelihood of a Poisson model whose squads differ, and whose clubs differ, by normal
// effects on the log rate; Laplace's method over all effects of the club at once.
//
// The squads of a club hang together by the club's effect alone, so that second derivatives between them are of few
// ranks: they are given as such, and a club of many squads costs no more than its squads.
#pragma once

#include <Eigen/Core>
#include <array>
#include <cstddef>

namespace lanework::evidence {

inline constexpr std::size_t kSquads = 0;  // the logarithm of the squads' effects' standard deviation
inline constexpr std::size_t kClubs = 1;   // and of the clubs'

struct ClubTerm {
  double log_likelihood = 0;  // less what does not depend on the effects
  // By squad, in the logarithm of its expected events s.
  Eigen::ArrayXd slope;
  // Second derivatives in s and s': on the diagonal 'own', everywhere rank[i] rank[j] times 'rank_weight', and
  // through the mode of the club's effect, which moves by move[i]: beside[i] move[j] + move[i] beside[j] + bend move[i]
  // move[j].
  Eigen::ArrayXd own;
  Eigen::ArrayXd rank;
  double rank_weight = 0;
  Eigen::ArrayXd move;
  Eigen::ArrayXd beside;
  double bend = 0;
  // In the two deviations: first, second, and with s.
  std::array<double, 2> by_deviation{};
  std::array<double, 3> by_deviations{};    // squads twice, both, clubs twice
  std::array<Eigen::ArrayXd, 2> by_both{};  // [deviation], by squad
  // Modes of the effects, and their variances given the counts.
  double club_mode = 0;
  double club_variance = 0;
  Eigen::ArrayXd squad_modes;
  Eigen::ArrayXd squad_variances;  // the club's effect moving with them
};

// events, expected (without effects): by squad.
ClubTerm club_term(const Eigen::Ref<const Eigen::ArrayXd>& events, const Eigen::Ref<const Eigen::ArrayXd>& expected,
                   double log_squad_deviation, double log_club_deviation);

}  // namespace lanework::evidence
