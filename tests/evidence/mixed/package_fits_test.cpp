// Fits of data sets that ship with R packages: ticks on grouse chicks (lme4; Elston DA et al., Parasitology 2001, doi
// 10.1017/S0031182001007740), seizures (MASS; Thall PF, Vail SC, Biometrics 1990, doi 10.2307/2532086; as of package
// version 7.3-58, before its row 31 was corrected), and disease in herds (lme4; Lesnoff M et al., Prev Vet Med 2004).
// By glmmTMB 1.1.5 and glmer with tightened tolerances (lme4 1.1-31), R 4.2.2.
#include <gtest/gtest.h>

#include <cmath>

#include "core/evidence/mixed/poisson_fit.h"
#include "tests/evidence/mixed/frame_of.h"
#include "tests/evidence/mixed/grouse_ticks.h"

namespace lanework::evidence {
namespace {

const std::string kFolder = LANEWORK_SOURCE_DIR "/tests/evidence/r/";

// glmer leaves out what makes its likelihood comparable where it takes more than one point.
double saturated(const Frame& frame) {
  double sum = 0;
  for (const double y : frame.events) sum += (y > 0 ? y * std::log(y) : 0) - y - std::lgamma(y + 1);
  return sum;
}

// The rows of a fit in their order: coefficients, deviations, log likelihood.
void expect_as_in_r(const PoissonFit& fit, const std::string& name, double added, double tolerance) {
  std::size_t c = 0;
  std::vector<double> deviations;
  for (const CsvRow& row : csv_rows(kFolder + "package_fits.csv")) {
    if (row.at("fit") != name) continue;
    const std::string& term = row.at("term");
    if (term == "logLik") {
      EXPECT_NEAR((fit.log_likelihood - added) / number(row, "est"), 1, 2e-8) << name;
    } else if (term.starts_with("sd")) {
      deviations.push_back(number(row, "est"));
    } else {
      ASSERT_LT(c, fit.coefficients.size());
      EXPECT_NEAR(fit.coefficients[c], number(row, "est"), tolerance) << name << ' ' << term;
      EXPECT_NEAR(fit.judged.error(c), number(row, "se"), tolerance) << name << ' ' << term;
      ++c;
    }
  }
  ASSERT_EQ(c, fit.coefficients.size()) << name;
  EXPECT_NEAR(fit.squad_deviation, deviations.at(0), tolerance) << name;
  if (deviations.size() > 1) {
    EXPECT_NEAR(fit.club_deviation, deviations[1], tolerance) << name;
  }
  EXPECT_TRUE(fit.judged.converged);
}

TEST(PackageFits, TicksOfBroods) {
  const Frame frame = grouse_ticks("");
  expect_as_in_r(fit_poisson(frame, 1), "grouseticks_tmb_brood", 0, 1e-5);
  expect_as_in_r(fit_poisson(frame, 9), "grouseticks_glmer_brood_agq9_tight", saturated(frame), 1e-5);
}

TEST(PackageFits, TicksOfBroodsWithinPlaces) {
  expect_as_in_r(fit_poisson(grouse_ticks("LOCATION"), 1), "grouseticks_tmb_loc_brood", 0, 2e-5);
}

TEST(PackageFits, Seizures) {
  const Column both = {"lb:trt",
                       [](const CsvRow& row) { return row.at("trt") == "progabide" ? number(row, "lb") : 0; }};
  const Frame frame =
      frame_of(csv_rows(kFolder + "epil.csv"),
               {"y",
                "",
                "subject",
                "",
                {ones(), as_it_is("lb"), category("trt", "progabide"), as_it_is("la"), as_it_is("V4"), both}});
  expect_as_in_r(fit_poisson(frame, 1), "epil_tmb", 0, 2e-5);
  expect_as_in_r(fit_poisson(frame, 25), "epil_glmer_agq25_tight", saturated(frame), 2e-5);
}

// The shape that club data have: counts, an offset, one effect of the group. Six digits, by R.
TEST(PackageFits, HerdsWithAnOffset) {
  const Frame frame = frame_of(csv_rows(kFolder + "cbpp.csv"),
                               {"incidence",
                                "size",
                                "herd",
                                "",
                                {ones(), category("period", "2"), category("period", "3"), category("period", "4")}});
  struct Row {
    int points;
    std::array<double, 4> coefficients;
    double deviation;
  };
  for (const Row& row : {Row{1, {-1.647809, -0.844075, -0.966289, -1.391056}, 0.491407},
                         Row{25, {-1.648997, -0.843181, -0.965411, -1.390013}, 0.494729}}) {
    const PoissonFit fit = fit_poisson(frame, row.points);
    for (std::size_t c = 0; c < 4; ++c) EXPECT_NEAR(fit.coefficients[c], row.coefficients[c], 1e-3) << row.points;
    EXPECT_NEAR(fit.squad_deviation, row.deviation, 1e-3);
  }
}

}  // namespace
}  // namespace lanework::evidence
