// A club's share of the log likelihood: its derivatives against differences, and a club of one squad against two
// effects that are one.
#include "core/evidence/mixed/club_term.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/evidence/mixed/squad_term.h"

namespace lanework::evidence {
namespace {

// All of a club's parameters in one vector: log expected events of the squads, then both deviations.
struct Club {
  std::vector<double> events;
  [[nodiscard]] ClubTerm at(const std::vector<double>& parameters) const {
    const auto squads = static_cast<Eigen::Index>(events.size());
    return club_term(Eigen::Map<const Eigen::ArrayXd>(events.data(), squads),
                     Eigen::Map<const Eigen::ArrayXd>(parameters.data(), squads).exp(), parameters[events.size()],
                     parameters[events.size() + 1]);
  }
  [[nodiscard]] std::vector<double> slopes(const std::vector<double>& parameters) const {
    const ClubTerm term = at(parameters);
    std::vector<double> out(term.slope.begin(), term.slope.end());
    out.insert(out.end(), term.by_deviation.begin(), term.by_deviation.end());
    return out;
  }
};

double second(const ClubTerm& term, Eigen::Index i, Eigen::Index j) {
  const Eigen::Index squads = term.slope.size();
  if (i > j) return second(term, j, i);
  if (j < squads) {
    return (i == j ? term.own[i] : 0) + term.rank_weight * term.rank[i] * term.rank[j] + term.beside[i] * term.move[j] +
           term.move[i] * term.beside[j] + term.bend * term.move[i] * term.move[j];
  }
  if (i < squads) return term.by_both[static_cast<std::size_t>(j - squads)][i];
  return term.by_deviations[static_cast<std::size_t>(i - squads + (j - squads))];
}

TEST(ClubTerm, DerivativesThroughTheModes) {
  constexpr double kStep = 1e-5;
  const std::vector<Club> clubs = {{{3}}, {{0, 0}}, {{2, 9, 0, 4}}, {{120, 90, 200}}};
  for (const Club& club : clubs) {
    for (const double squads : {-2.5, -0.7}) {
      for (const double between : {-2.0, -0.4}) {
        std::vector<double> at;
        for (std::size_t i = 0; i < club.events.size(); ++i)
          at.push_back(std::log(club.events[i] + 0.7) + (i % 2 == 0 ? 0.3 : -0.4));
        at.push_back(squads);
        at.push_back(between);
        const ClubTerm term = club.at(at);
        const std::vector<double> slopes = club.slopes(at);
        for (std::size_t j = 0; j < at.size(); ++j) {
          std::vector<double> up = at;
          std::vector<double> down = at;
          up[j] += kStep;
          down[j] -= kStep;
          const double slope = (club.at(up).log_likelihood - club.at(down).log_likelihood) / (2 * kStep);
          EXPECT_NEAR(slopes[j], slope, 1e-6 * std::max(1.0, std::abs(slope))) << j;
          for (std::size_t i = 0; i < at.size(); ++i) {
            const double bend = (club.slopes(up)[i] - club.slopes(down)[i]) / (2 * kStep);
            EXPECT_NEAR(second(term, static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)), bend,
                        1e-6 * std::max(1.0, std::abs(bend)))
                << i << ' ' << j;
          }
        }
      }
    }
  }
}

// With hardly any effect of the club the squads are alone.
TEST(ClubTerm, WithoutClubsItIsTheSquads) {
  const Eigen::Array3d events(4, 0, 11);
  const Eigen::Array3d log_expected(0.9, 0.2, 2.6);
  const Quadrature laplace = gauss_hermite(1);
  double sum = 0;
  for (Eigen::Index i = 0; i < 3; ++i)
    sum += squad_term(events(i), log_expected(i), -0.9, laplace).log_likelihood.value;
  EXPECT_NEAR(club_term(events, log_expected.exp(), -0.9, -12).log_likelihood, sum, 1e-8);
}

}  // namespace
}  // namespace lanework::evidence
