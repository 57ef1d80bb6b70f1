// The curve's columns make the same curves as R's ns(), whose columns (4 degrees, of week, R 4.2.2) stand in the
// invented club's table as s1 to s4.
#include "core/evidence/mixed/natural_spline.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <Eigen/Dense>
#include <vector>

#include "tests/evidence/csv_rows.h"

namespace lanework::evidence {
namespace {

TEST(NaturalSpline, MakesTheCurvesOfR) {
  const std::vector<CsvRow> rows = csv_rows(LANEWORK_SOURCE_DIR "/tests/evidence/r/squad_weeks_small.csv");
  std::vector<double> weeks;
  for (const CsvRow& row : rows) weeks.push_back(number(row, "week"));
  const NaturalSpline curve(weeks, 4);
  ASSERT_TRUE(curve.has_knots());
  ASSERT_EQ(curve.columns(), 4);
  const auto count = static_cast<Eigen::Index>(rows.size());
  Eigen::MatrixXd ours(count, 5);
  Eigen::MatrixXd theirs(count, 4);
  for (Eigen::Index i = 0; i < count; ++i) {
    const CsvRow& row = rows[static_cast<std::size_t>(i)];
    std::vector<double> cells(4);
    curve.row(number(row, "week"), cells.data());
    ours(i, 0) = 1;
    for (int c = 0; c < 4; ++c) {
      ours(i, c + 1) = cells[static_cast<std::size_t>(c)];
      theirs(i, c) = number(row, "s" + std::to_string(c + 1));
    }
  }
  const Eigen::MatrixXd left = theirs - ours * ours.colPivHouseholderQr().solve(theirs);
  // The table has nine digits.
  EXPECT_LT(left.cwiseAbs().maxCoeff(), 1e-8);
  EXPECT_EQ(ours.colPivHouseholderQr().rank(), 5);
}

// Beyond the outer knots it is a straight line.
RC_GTEST_PROP(NaturalSpline, IsStraightOutside, ()) {
  const auto raw = *rc::gen::unique<std::vector<int>>(12, rc::gen::inRange(0, 1000));
  const std::vector<double> values(raw.begin(), raw.end());
  const int degrees = *rc::gen::inRange(2, 6);
  const NaturalSpline curve(values, degrees);
  RC_ASSERT(curve.has_knots());
  const double beyond = *rc::gen::element(1200.0, -300.0);
  std::vector<double> a(curve.columns());
  std::vector<double> b(curve.columns());
  std::vector<double> c(curve.columns());
  curve.row(beyond, a.data());
  curve.row(beyond + 50, b.data());
  curve.row(beyond + 100, c.data());
  for (std::size_t i = 0; i < a.size(); ++i) RC_ASSERT(std::abs(a[i] - 2 * b[i] + c[i]) < 1e-9 * (1 + std::abs(b[i])));
}

TEST(NaturalSpline, TooFewDifferentValuesHaveNoKnots) {
  EXPECT_FALSE(NaturalSpline(std::vector<double>{1, 1, 1, 1, 2}, 4).has_knots());
}

}  // namespace
}  // namespace lanework::evidence
