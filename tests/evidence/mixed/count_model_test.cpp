// Fits asked for as a table and its columns, against R's: the invented club with glmmTMB 1.1.5 and polished
// likelihoods, school absence with MASS 7.3-58's glm.nb (Venables WN, Ripley BD, Modern Applied Statistics with S).
#include "core/evidence/mixed/count_model.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/evidence/mixed/nb2_objective.h"
#include "core/evidence/mixed/nested_objective.h"
#include "core/evidence/mixed/poisson_objective.h"
#include "tests/evidence/table_of.h"

namespace lanework::evidence {
namespace {

const std::string kFolder = LANEWORK_SOURCE_DIR "/tests/evidence/r/";

BuiltFrame small_club(TermKind week) {
  const DataTable table =
      table_of_file(kFolder + "squad_weeks_small.csv",
                    {"squad", "week", "age", "sexF", "adh", "hours", "match_share", "s1", "s2", "s3", "s4", "y"});
  ModelWanted wanted{"y",
                     "hours",
                     "squad",
                     "",
                     {{TermKind::kNumber, "adh", {}, 0},
                      {TermKind::kCategory, "age", "U11", 0},
                      {TermKind::kNumber, "sexF", {}, 0},
                      {TermKind::kNumber, "match_share", {}, 0}}};
  if (week == TermKind::kCurve) {
    wanted.terms.push_back({TermKind::kCurve, "week", {}, 4});
  } else {
    for (const char* name : {"s1", "s2", "s3", "s4"}) wanted.terms.push_back({TermKind::kNumber, name, {}, 0});
  }
  auto built = build_frame(table, wanted);
  EXPECT_TRUE(built) << to_line(built.faults().front());
  return std::move(built).value();
}

const CoefficientFound& named(const CountModel& model, const std::string& name) {
  for (const CoefficientFound& found : model.coefficients)
    if (found.name == name) return found;
  ADD_FAILURE() << name;
  return model.coefficients.front();
}

// The curve's own columns differ from R's, what it can draw does not: same likelihood, same other coefficients.
TEST(CountModel, ACurveOfOursIsACurveOfR) {
  for (const TermKind week : {TermKind::kNumber, TermKind::kCurve}) {
    const CountModel model = fit_model(small_club(week), {CountFamily::kPoisson, true, 1, 0.95});
    EXPECT_NEAR(model.log_likelihood, -426.69086858, 1e-7);
    EXPECT_NEAR(named(model, "adh").estimate, -0.319384145, 1e-6);
    EXPECT_NEAR(named(model, "adh").error, 0.09449650, 1e-6);
    EXPECT_NEAR(named(model, "match_share").estimate, 0.836844215, 1e-6);
    EXPECT_NEAR(std::log(model.squads->estimate), -1.298881000, 1e-5);
    // Its limits: log deviation and so many errors (0.40597516 in R).
    EXPECT_NEAR(std::log(model.squads->limits->high / model.squads->estimate), 1.959964 * 0.40597516, 1e-5);
    EXPECT_TRUE(model.judged.converged);
  }
}

TEST(CountModel, GaussHermite) {
  const CountModel model = fit_model(small_club(TermKind::kCurve), {CountFamily::kPoisson, true, 25, 0.95});
  EXPECT_NEAR(model.log_likelihood, -426.71002465, 1e-7);
  EXPECT_NEAR(named(model, "adh").estimate, -0.319295833, 1e-6);
}

// A term of one column: the likelihood ratio is near the square of its z.
TEST(CountModel, LikelihoodRatios) {
  const CountModel model = fit_model(small_club(TermKind::kCurve), {CountFamily::kPoisson, true, 1, 0.95});
  ASSERT_EQ(model.tests.size(), 6);
  EXPECT_EQ(model.tests[0].without, "adh");
  const CoefficientFound& adh = named(model, "adh");
  EXPECT_NEAR(model.tests[0].chi_squared, std::pow(adh.estimate / adh.error, 2), 1);
  EXPECT_NEAR(model.tests[0].p, adh.p, 0.001);
  EXPECT_EQ(model.tests[1].degrees, 3);  // age
  EXPECT_EQ(model.tests[4].degrees, 4);  // week
  EXPECT_EQ(model.tests[5].without, "differences between squads");
  EXPECT_GT(model.tests[5].chi_squared, 0);
  EXPECT_LE(model.tests[5].p, 0.5);
}

BuiltFrame absence() {
  // Days of absence: no hours, so that each row counts as one.
  std::vector<std::vector<std::string>> rows;
  for (const CsvRow& row : csv_rows(kFolder + "quine.csv"))
    rows.push_back({row.at("Eth"), row.at("Sex"), row.at("Age"), row.at("Lrn"), row.at("Days"), "1"});
  auto built = build_frame(table_of({"Eth", "Sex", "Age", "Lrn", "Days", "one"}, rows),
                           {"Days",
                            "one",
                            "",
                            "",
                            {{TermKind::kCategory, "Eth", "A", 0},
                             {TermKind::kCategory, "Sex", "F", 0},
                             {TermKind::kCategory, "Age", "F0", 0},
                             {TermKind::kCategory, "Lrn", "AL", 0}}});
  EXPECT_TRUE(built) << to_line(built.faults().front());
  return std::move(built).value();
}

// Six digits, by R.
TEST(CountModel, NegativeBinomialWithoutSquads) {
  const CountModel model = fit_model(absence(), {CountFamily::kNegativeBinomial, false, 1, 0.95});
  EXPECT_NEAR(named(model, "intercept").estimate, 2.894580, 2e-6);
  EXPECT_NEAR(named(model, "Eth: N").estimate, -0.569372, 2e-6);
  EXPECT_NEAR(named(model, "Age: F3").estimate, 0.356901, 2e-6);
  EXPECT_NEAR(model.size->estimate, 1.274893, 2e-6);
  EXPECT_NEAR(2 * model.log_likelihood, -1093.1510, 1e-4);
  EXPECT_FALSE(model.squads.has_value());
}

TEST(CountModel, CountsThatVaryMoreThanAPoissonsAreNoticed) {
  const CountModel model = fit_model(absence(), {CountFamily::kPoisson, false, 1, 0.95});
  EXPECT_NEAR(named(model, "intercept").estimate, 2.715380, 2e-6);
  EXPECT_NEAR(model.dispersion, 13.166843, 1e-5);
  EXPECT_GT(model.dispersion_errors, 50);
  const CountModel club = fit_model(small_club(TermKind::kCurve), {CountFamily::kPoisson, true, 1, 0.95});
  EXPECT_LT(club.dispersion_errors, 3);
}

// A mode's variance is one by the bend of the log density there: half of the sum over the club moves with it.
double log_density(const Frame& frame, const std::vector<double>& coefficients, double deviation,
                   const std::vector<double>& effects, double size) {
  double sum = 0;
  std::size_t squad = 0;
  for (std::size_t row = 0; row < frame.rows(); ++row) {
    while (row >= frame.squad_ends[squad]) ++squad;
    double t = frame.log_hours[row] + effects[squad];
    for (std::size_t c = 0; c < frame.columns(); ++c) t += frame.design[row * frame.columns() + c] * coefficients[c];
    const double y = frame.events[row];
    sum += size > 0 ? y * t - (y + size) * std::log(size + std::exp(t)) : y * t - std::exp(t);
  }
  for (const double effect : effects) sum -= effect * effect / (2 * deviation * deviation);
  return sum;
}

TEST(CountModel, VariancesOfEffectsAreOneByTheBend) {
  const BuiltFrame built = small_club(TermKind::kNumber);
  std::vector<double> coefficients;
  for (const auto& found : fit_model(built, {CountFamily::kPoisson, true, 1, 0.95}).coefficients)
    coefficients.push_back(found.estimate);
  constexpr double kDeviation = 0.4;
  for (const double size : {0.0, 1.5}) {
    const std::vector<RandomEffect> effects =
        size > 0 ? Nb2Objective(built.frame).effects(coefficients, std::log(size), std::log(kDeviation))
                 : PoissonObjective(built.frame, 1).effects(coefficients, std::log(kDeviation));
    std::vector<double> at;
    for (const RandomEffect& effect : effects) at.push_back(effect.mode);
    for (const std::size_t squad : {std::size_t{0}, std::size_t{7}}) {
      const auto moved = [&](double by) {
        std::vector<double> there = at;
        there[squad] += by;
        return log_density(built.frame, coefficients, kDeviation, there, size);
      };
      constexpr double kStep = 1e-3;
      EXPECT_NEAR((moved(kStep) - moved(-kStep)) / kStep, 0, 1e-4);
      const double bend = -(moved(kStep) - 2 * moved(0) + moved(-kStep)) / (kStep * kStep);
      EXPECT_NEAR(effects[squad].variance * bend, 1, 1e-4) << size;
    }
  }
}

// Squads within clubs: by inverting the whole matrix of second derivatives of a club's effects.
TEST(CountModel, VariancesOfNestedEffects) {
  BuiltFrame built = small_club(TermKind::kNumber);
  built.frame.club_ends = {10, 24};
  std::vector<double> coefficients(built.frame.columns(), 0);
  coefficients[0] = -5.5;
  const double squad_variance = 0.09;
  const double club_variance = 0.16;
  const NestedObjective::Effects effects =
      NestedObjective(built.frame).effects(coefficients, std::log(0.3), std::log(0.4));
  // Of the first club: squads' expected events at the modes; the matrix is diagonal but for the club's row, which is
  // cleared by hand.
  double club_bend = 1 / club_variance;
  std::vector<double> own;
  std::vector<double> means;
  for (std::size_t squad = 0; squad < 10; ++squad) {
    double mean = 0;
    for (std::size_t row = squad == 0 ? 0 : built.frame.squad_ends[squad - 1]; row < built.frame.squad_ends[squad];
         ++row)
      mean +=
          std::exp(built.frame.log_hours[row] + coefficients[0] + effects.squads[squad].mode + effects.clubs[0].mode);
    means.push_back(mean);
    own.push_back(mean + 1 / squad_variance);
    club_bend += mean - mean * mean / own.back();
  }
  EXPECT_NEAR(effects.clubs[0].variance, 1 / club_bend, 1e-9);
  for (std::size_t squad = 0; squad < 10; ++squad)
    EXPECT_NEAR(effects.squads[squad].variance, 1 / own[squad] + std::pow(means[squad] / own[squad], 2) / club_bend,
                1e-9);
}

}  // namespace
}  // namespace lanework::evidence
