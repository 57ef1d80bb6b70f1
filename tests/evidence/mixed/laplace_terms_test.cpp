// Many squads at once, derivatives by formula, against one squad with derivatives carried along.
#include "core/evidence/mixed/laplace_terms.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/evidence/mixed/squad_term.h"

namespace lanework::evidence {
namespace {

TEST(LaplaceTerms, AreThoseOfEachSquad) {
  const Quadrature laplace = gauss_hermite(1);
  Eigen::ArrayXd events(12);
  events << 0, 0, 0, 1, 1, 1, 7, 7, 7, 240, 240, 240;
  Eigen::ArrayXd log_expected(12);
  log_expected << -3, 0.5, 4, -3, 0.5, 4, -3, 0.5, 4, -3, 0.5, 4;
  for (const double log_deviation : {-4.0, -1.3, 0.6}) {
    const SquadTerms found = laplace_terms(events, log_expected.exp(), log_deviation);
    for (Eigen::Index i = 0; i < events.size(); ++i) {
      const SquadTerm one = squad_term(events(i), log_expected(i), log_deviation, laplace);
      const auto near = [&](double ours, double theirs) {
        EXPECT_NEAR(ours, theirs, 1e-11 * std::max(1.0, std::abs(theirs))) << i << ' ' << log_deviation;
      };
      near(found.log_likelihood(i), one.log_likelihood.value);
      near(found.by_expected(i), one.log_likelihood.first[kByExpected]);
      near(found.by_deviation(i), one.log_likelihood.first[kByDeviation]);
      near(found.by_expected_twice(i), one.log_likelihood.second[SquadJet::at(kByExpected, kByExpected)]);
      near(found.by_both(i), one.log_likelihood.second[SquadJet::at(kByExpected, kByDeviation)]);
      near(found.by_deviation_twice(i), one.log_likelihood.second[SquadJet::at(kByDeviation, kByDeviation)]);
      near(found.mode(i), one.mode);
      near(found.variance(i), one.variance);
    }
  }
}

}  // namespace
}  // namespace lanework::evidence
