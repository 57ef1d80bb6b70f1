// Negative binomial fits against R's (glmmTMB 1.1.5, MASS 7.3-58's glm.nb), and their derivatives against differences.
#include <gtest/gtest.h>

#include <cmath>

#include "core/evidence/mixed/nb2_fit.h"
#include "core/evidence/mixed/nb2_objective.h"
#include "tests/evidence/mixed/frame_of.h"
#include "tests/evidence/mixed/grouse_ticks.h"

namespace lanework::evidence {
namespace {

const std::string kFolder = LANEWORK_SOURCE_DIR "/tests/evidence/r/";

struct Fitted {
  std::vector<double> estimates;
  std::vector<double> errors;
  double size = 0;
  double deviation = 0;
  double log_likelihood = 0;
};

Fitted in_r(const std::string& file, const std::string& fit) {
  Fitted out;
  for (const CsvRow& row : csv_rows(kFolder + file)) {
    if (row.at("fit") != fit) continue;
    const std::string& term = row.at("term");
    if (term == "logLik") {
      out.log_likelihood = number(row, "est");
    } else if (term == "theta") {
      out.size = number(row, "est");
    } else if (term.starts_with("sd")) {
      out.deviation = number(row, "est");
    } else {
      out.estimates.push_back(number(row, "est"));
      out.errors.push_back(number(row, "se"));
    }
  }
  return out;
}

void expect_as_in_r(const Nb2Fit& fit, const Fitted& expected, double tolerance, double errors_tolerance) {
  ASSERT_EQ(fit.coefficients.size(), expected.estimates.size());
  for (std::size_t c = 0; c < fit.coefficients.size(); ++c) {
    EXPECT_NEAR(fit.coefficients[c], expected.estimates[c], tolerance) << c;
    EXPECT_NEAR(fit.judged.error(c), expected.errors[c], errors_tolerance) << c;
  }
  EXPECT_NEAR(fit.size / expected.size, 1, tolerance * 3);
  EXPECT_NEAR(fit.log_likelihood / expected.log_likelihood, 1, 1e-8);
  EXPECT_TRUE(fit.judged.converged);
  EXPECT_GT(fit.judged.least_bend, 0);
}

TEST(Nb2, TicksOfBroods) {
  const Nb2Fit fit = fit_nb2(grouse_ticks(""));
  const Fitted expected = in_r("package_fits.csv", "grouseticks_tmb_brood_nb2");
  // glmmTMB's coefficients are known to 4e-5.
  expect_as_in_r(fit, expected, 5e-5, 2e-5);
  EXPECT_NEAR(fit.squad_deviation, expected.deviation, 2e-5);
}

TEST(Nb2, Seizures) {
  const Column both = {"lb:trt",
                       [](const CsvRow& row) { return row.at("trt") == "progabide" ? number(row, "lb") : 0; }};
  const Nb2Fit fit =
      fit_nb2(frame_of(csv_rows(kFolder + "epil.csv"),
                       {"y",
                        "",
                        "subject",
                        "",
                        {ones(), as_it_is("lb"), category("trt", "progabide"), as_it_is("la"), as_it_is("V4"), both}}));
  const Fitted expected = in_r("package_fits.csv", "epil_tmb_nb2");
  expect_as_in_r(fit, expected, 5e-5, 5e-5);
  EXPECT_NEAR(fit.squad_deviation, expected.deviation, 2e-5);
}

// Calls of nestlings (glmmTMB; Roulin A, Bersier LF, Anim Behav 2007, doi 10.1016/j.anbehav.2007.05.012).
TEST(Nb2, CallsOfNestlings) {
  const Column both = {"both", [](const CsvRow& row) {
                         return row.at("FoodTreatment") == "Satiated" && row.at("SexParent") == "Male" ? 1.0 : 0.0;
                       }};
  const Nb2Fit fit = fit_nb2(
      frame_of(csv_rows(kFolder + "owls.csv"),
               {"NCalls",
                "BroodSize",
                "Nest",
                "",
                {ones(), category("FoodTreatment", "Satiated"), category("SexParent", "Male"), as_it_is("FT"), both}}));
  const Fitted expected = in_r("package_fits.csv", "owls_tmb_nb2");
  expect_as_in_r(fit, expected, 2e-5, 2e-5);
  EXPECT_NEAR(fit.squad_deviation, expected.deviation, 2e-5);
}

// A club whose squads do not differ beyond what its weeks do.
TEST(Nb2, SquadsAtTheBoundary) {
  std::vector<Column> fixed = {
      ones(),           as_it_is("adh"),        category("age", "U13"), category("age", "U15"), category("age", "U19"),
      as_it_is("sexF"), as_it_is("match_share")};
  for (const char* spline : {"s1", "s2", "s3", "s4"}) fixed.push_back(as_it_is(spline));
  const Nb2Fit fit =
      fit_nb2(frame_of(csv_rows(kFolder + "squad_weeks_small.csv"), {"ynb", "hours", "squad", "", fixed}));
  EXPECT_EQ(fit.squad_deviation, 0);
  expect_as_in_r(fit, in_r("squad_weeks_small_fits.csv", "glmmTMB_nb2"), 1e-6, 1e-4);
  // MASS takes the expected information for its errors.
  const Fitted mass = in_r("squad_weeks_small_fits.csv", "glmnb");
  EXPECT_NEAR(fit.coefficients[1], mass.estimates[1], 1e-6);
  EXPECT_NEAR(fit.size, mass.size, 1e-5);
}

TEST(Nb2, ObjectivesDerivatives) {
  constexpr double kStep = 1e-5;
  const Frame frame =
      frame_of(csv_rows(kFolder + "epil.csv"), {"y", "", "subject", "", {ones(), as_it_is("lb"), as_it_is("V4")}});
  const Nb2Objective objective(frame);
  // The last of five is the logarithm of the deviation; without it there are no effects.
  const auto value = [&](const std::vector<double>& at) {
    return objective.at({at[0], at[1], at[2]}, at[3], at.size() > 4 ? std::optional(at[4]) : std::nullopt);
  };
  for (const std::vector<double>& at : {std::vector<double>{1.4, 0.6, -0.2, 1.2, -0.6},
                                        {2.0, 0.9, 0.1, 3.0, -2.0},
                                        {1.0, 0.2, 0.4, -1.0, 0.3},
                                        {1.4, 0.6, -0.2, 9.0, -1.0},
                                        {1.4, 0.6, -0.2, 1.2},
                                        {1.4, 0.6, -0.2, 8.0}}) {
    const ObjectiveValue here = value(at);
    for (std::size_t j = 0; j < at.size(); ++j) {
      std::vector<double> up = at;
      std::vector<double> down = at;
      up[j] += kStep;
      down[j] -= kStep;
      const double slope = (value(up).log_likelihood - value(down).log_likelihood) / (2 * kStep);
      EXPECT_NEAR(here.gradient[j], slope, 1e-6 * std::max(1.0, std::abs(slope))) << j;
      for (std::size_t i = 0; i < at.size(); ++i) {
        const double bend = (value(up).gradient[i] - value(down).gradient[i]) / (2 * kStep);
        EXPECT_NEAR(here.hessian[i * at.size() + j], bend, 2e-6 * std::max(1.0, std::abs(bend))) << i << ' ' << j;
      }
    }
  }
}

}  // namespace
}  // namespace lanework::evidence
