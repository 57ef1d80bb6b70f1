// Fits of an invented club of 24 squads and 30 weeks against R's: glm, glmmTMB 1.1.5, and an independent likelihood
// polished by Newton's method in R 4.2.2 ('gold').
#include "core/evidence/mixed/poisson_fit.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/evidence/csv_rows.h"

namespace lanework::evidence {
namespace {

const std::string kFolder = LANEWORK_SOURCE_DIR "/tests/evidence/r/";

Frame small_club() {
  Frame frame;
  frame.names = {"(Intercept)", "adh", "ageU13", "ageU15", "ageU19", "sexF", "match_share", "s1", "s2", "s3", "s4"};
  std::string squad;
  for (const CsvRow& row : csv_rows(kFolder + "squad_weeks_small.csv")) {
    if (!squad.empty() && row.at("squad") != squad) frame.squad_ends.push_back(frame.rows());
    squad = row.at("squad");
    for (const std::string& name : frame.names) {
      const bool age = name.starts_with("age");
      frame.design.push_back(name == "(Intercept)" ? 1
                             : age                 ? (row.at("age") == name.substr(3) ? 1 : 0)
                                                   : number(row, name));
    }
    frame.log_hours.push_back(std::log(number(row, "hours")));
    frame.events.push_back(number(row, "y"));
  }
  frame.squad_ends.push_back(frame.rows());
  return frame;
}

struct Expected {
  std::vector<double> estimates;
  std::vector<double> errors;
  double deviation = 0;
  double log_likelihood = 0;
};

// name of the deviation's row: its logarithm in the 'gold' fits.
Expected fitted_in_r(const std::string& fit) {
  Expected out;
  for (const CsvRow& row : csv_rows(kFolder + "squad_weeks_small_fits.csv")) {
    if (row.at("fit") != fit) continue;
    const std::string& term = row.at("term");
    if (term == "logLik") {
      out.log_likelihood = number(row, "est");
    } else if (term.starts_with("sd:squad")) {
      out.deviation = number(row, "est");
    } else if (term == "sd:club") {
      continue;
    } else if (term.starts_with("log")) {
      out.deviation = std::exp(number(row, "est"));
    } else {
      out.estimates.push_back(number(row, "est"));
      out.errors.push_back(number(row, "se"));
    }
  }
  return out;
}

void expect_as_in_r(const PoissonFit& fit, const std::string& name, double tolerance) {
  const Expected expected = fitted_in_r(name);
  ASSERT_EQ(expected.estimates.size(), 11U) << name;
  for (std::size_t c = 0; c < 11; ++c) {
    EXPECT_NEAR(fit.coefficients[c], expected.estimates[c], tolerance) << name << ' ' << c;
    EXPECT_NEAR(fit.judged.error(c), expected.errors[c], tolerance) << name << ' ' << c;
  }
  EXPECT_NEAR(fit.squad_deviation, expected.deviation, tolerance) << name;
  EXPECT_NEAR(fit.log_likelihood / expected.log_likelihood, 1, 1e-8) << name;
  EXPECT_TRUE(fit.judged.converged);
  EXPECT_GT(fit.judged.least_bend, 0);
}

TEST(PoissonFit, LaplaceAsInR) {
  const PoissonFit fit = fit_poisson(small_club(), 1);
  expect_as_in_r(fit, "gold_pois_laplace", 1e-7);
  expect_as_in_r(fit, "glmmTMB_pois", 1e-5);
  EXPECT_GT(fit.squad_deviation, 0);
}

// Clubs of these squads do not differ: the deviation is 0, and the rest is as without them. glmmTMB stops near 6e-5.
TEST(PoissonFit, ClubsAtTheBoundary) {
  Frame frame = small_club();
  for (std::size_t squad = 4; squad <= frame.squads(); squad += 4) frame.club_ends.push_back(squad);
  const PoissonFit fit = fit_poisson(frame, 1);
  EXPECT_EQ(fit.club_deviation, 0);
  expect_as_in_r(fit, "glmmTMB_pois_nested", 1e-5);
}

TEST(PoissonFit, GaussHermiteAsInR) {
  expect_as_in_r(fit_poisson(small_club(), 9), "gold_pois_agq9", 1e-7);
  expect_as_in_r(fit_poisson(small_club(), 25), "gold_pois_agq25", 1e-7);
}

}  // namespace
}  // namespace lanework::evidence
