// Many squads: the climb begins where that of a share of them ended, and must end at the same top.
#include "core/evidence/mixed/share_of_squads.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <boost/random/gamma_distribution.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>

#include "core/evidence/mixed/nb2_fit.h"
#include "core/evidence/mixed/nb2_objective.h"
#include "core/evidence/mixed/nested_objective.h"
#include "core/evidence/mixed/poisson_fit.h"
#include "core/evidence/mixed/poisson_objective.h"
#include "core/evidence/random_engine.h"

namespace lanework::evidence {
namespace {

constexpr std::size_t kClubs = 96;
constexpr std::size_t kSquadsAClub = 5;
constexpr std::size_t kWeeks = 12;

// club_spread, squad_spread: standard deviations of the effects on the log rate. size: of the counts, 0: as by chance.
Frame many_squads(double club_spread, double squad_spread, double size) {
  RandomEngine engine(4, 1, 0, 0);
  boost::random::normal_distribution<double> normal;
  Frame frame;
  frame.names = {"(Intercept)", "age", "dose"};
  for (std::size_t club = 0; club < kClubs; ++club) {
    const double club_effect = club_spread * normal(engine);
    for (std::size_t squad = 0; squad < kSquadsAClub; ++squad) {
      const double effect = club_effect + squad_spread * normal(engine);
      const double age = squad % 2 == 0 ? 1 : 0;
      for (std::size_t week = 0; week < kWeeks; ++week) {
        const double dose = static_cast<double>((week * 7 + squad * 3 + club) % 5) / 2;
        const double log_hours = std::log(20.0 + 3 * static_cast<double>((week + squad) % 6));
        double mean = std::exp(log_hours - 4 + 0.3 * age - 0.2 * dose + effect);
        if (size > 0) mean *= boost::random::gamma_distribution<double>(size, 1 / size)(engine);
        frame.design.insert(frame.design.end(), {1, age, dose});
        frame.log_hours.push_back(log_hours);
        frame.events.push_back(boost::random::poisson_distribution<int, double>(mean)(engine));
      }
      frame.squad_ends.push_back(frame.rows());
    }
    frame.club_ends.push_back(frame.squads());
  }
  return frame;
}

Frame without_clubs(Frame frame) {
  frame.club_ends.clear();
  return frame;
}

void expect_top(const ObjectiveValue& value, const Judged& judged) {
  EXPECT_TRUE(judged.converged);
  EXPECT_GT(judged.least_bend, 1e-4);
  for (std::size_t i = 0; i < value.gradient.size(); ++i)
    EXPECT_LT(std::abs(value.gradient[i]) * judged.error(i), 1e-7);
}

TEST(ShareOfSquads, WholeSquadsAndClubs) {
  const Frame all = many_squads(0.3, 0.4, 0);
  const Frame clubs = share_of_squads(all, 8);
  EXPECT_NEAR(static_cast<double>(clubs.club_ends.size()), kClubs / 8.0, 3);
  EXPECT_EQ(clubs.squads(), clubs.club_ends.size() * kSquadsAClub);
  EXPECT_EQ(clubs.rows(), clubs.squads() * kWeeks);
  // The first club is among them, whole.
  const auto of_club = static_cast<std::ptrdiff_t>(kSquadsAClub * kWeeks);
  EXPECT_TRUE(std::equal(all.events.begin(), all.events.begin() + of_club, clubs.events.begin()));
}

// Squads that stand in every club in the same order: of each place some are picked.
TEST(ShareOfSquads, OfEveryPlaceInAClub) {
  for (const std::size_t one_in : {std::size_t{2}, std::size_t{5}, std::size_t{8}, std::size_t{10}}) {
    Frame all;
    all.names = {"place"};
    for (std::size_t squad = 0; squad < 4000; ++squad) {
      all.design.push_back(static_cast<double>(squad % 20));
      all.log_hours.push_back(0);
      all.events.push_back(0);
      all.squad_ends.push_back(squad + 1);
    }
    const Frame picked = share_of_squads(all, one_in);
    std::array<int, 20> of_place{};
    for (const double place : picked.design) ++of_place[static_cast<std::size_t>(place)];
    const double fair = 200.0 / static_cast<double>(one_in);
    for (const int count : of_place) EXPECT_NEAR(count, fair, 0.2 * fair + 2) << one_in;
  }
}

TEST(ShareOfSquads, SquadsEndAtTheTop) {
  const Frame frame = without_clubs(many_squads(0, 0.4, 0));
  for (const int points : {1, 5}) {
    const PoissonFit fit = fit_poisson(frame, points);
    ASSERT_GT(fit.squad_deviation, 0.2);
    expect_top(PoissonObjective(frame, points).at(fit.coefficients, std::log(fit.squad_deviation)), fit.judged);
    EXPECT_LE(fit.judged.evaluations, 7);  // of all rows
  }
}

TEST(ShareOfSquads, ClubsEndAtTheTop) {
  const Frame frame = many_squads(0.4, 0.4, 0);
  const PoissonFit fit = fit_poisson(frame, 1);
  ASSERT_GT(fit.club_deviation, 0.2);
  expect_top(NestedObjective(frame).at(fit.coefficients, std::log(fit.squad_deviation), std::log(fit.club_deviation)),
             fit.judged);
}

TEST(ShareOfSquads, NegativeBinomialEndsAtTheTop) {
  const Frame frame = without_clubs(many_squads(0, 0.5, 1.5));
  const Nb2Fit fit = fit_nb2(frame);
  ASSERT_GT(fit.squad_deviation, 0.2);
  expect_top(Nb2Objective(frame).at(fit.coefficients, std::log(fit.size), std::log(fit.squad_deviation)), fit.judged);
}

// Where the share or all of them show no difference, the climb ends at the edge as it does for few squads.
TEST(ShareOfSquads, NoDifferenceIsStillNone) {
  const Frame frame = many_squads(0, 0, 0);
  const PoissonFit fit = fit_poisson(frame, 1);
  const PoissonFit alone = fit_poisson_alone(frame);
  EXPECT_TRUE(fit.judged.converged);
  EXPECT_GE(fit.log_likelihood, alone.log_likelihood - 1e-9);
  EXPECT_LT(fit.squad_deviation, 0.25);
}

}  // namespace
}  // namespace lanework::evidence
