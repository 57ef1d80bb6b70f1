// Limits of agreement beside those of Shrout and Fleiss, and as they must lie.
#include "core/evidence/agreement_limits.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <boost/math/distributions/fisher_f.hpp>
#include <cmath>

namespace lanework::evidence {
namespace {

// The example of Shrout PE, Fleiss JL, Psychol Bull 1979, doi 10.1037/0033-2909.86.2.420: six subjects, four raters.
const Scores kSixByFour = {{9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}};

TEST(AgreementLimits, NearTheApproximateOnes) {
  const Correlations found = intraclass_correlations(kSixByFour, 0.95);
  const Interval limits = agreement_limits(found.mean_squares, 6, 4, 0.95);
  EXPECT_NEAR(limits.low, found.one_agreement.limits.low, 0.06);
  EXPECT_NEAR(limits.high, found.one_agreement.limits.high, 0.06);
  EXPECT_LT(limits.low, found.one_agreement.estimate);
  EXPECT_GT(limits.high, found.one_agreement.estimate);
}

// With many raters who score alike there is one error, and the limits are near those of Shrout and Fleiss' (1,1).
TEST(AgreementLimits, WithoutRatersLevels) {
  constexpr double kSubjects = 40;
  constexpr double kRaters = 30;
  constexpr double kRatio = 6;
  const Interval limits = agreement_limits({2 * kRatio, 2, 2, 2}, 40, 30, 0.95);
  const auto correlation = [&](double f) { return (f - 1) / (f + kRaters - 1); };
  const boost::math::fisher_f low(kSubjects - 1, kSubjects * (kRaters - 1));
  const boost::math::fisher_f high(kSubjects * (kRaters - 1), kSubjects - 1);
  EXPECT_NEAR(limits.low, correlation(kRatio / boost::math::quantile(low, 0.975)), 0.01);
  EXPECT_NEAR(limits.high, correlation(kRatio * boost::math::quantile(high, 0.975)), 0.01);
}

RC_GTEST_PROP(AgreementLimits, WiderForMoreConfidenceAndTheSameInOtherUnits, ()) {
  const auto subjects = *rc::gen::inRange<std::size_t>(3, 20);
  const auto raters = *rc::gen::inRange<std::size_t>(2, 6);
  const auto positive = [] { return *rc::gen::inRange(1, 1000) / 100.0; };
  const double error = positive();
  const MeanSquares squares{error + positive(), 0, error * positive(), error};
  const Interval narrow = agreement_limits(squares, subjects, raters, 0.8);
  const Interval wide = agreement_limits(squares, subjects, raters, 0.95);
  RC_ASSERT(wide.low <= narrow.low);
  RC_ASSERT(narrow.low < narrow.high);
  RC_ASSERT(narrow.high <= wide.high);
  RC_ASSERT(wide.low >= -1.0 / static_cast<double>(raters - 1) && wide.high <= 1);
  const Interval scaled =
      agreement_limits({squares.subjects * 49, 0, squares.raters * 49, squares.residual * 49}, subjects, raters, 0.95);
  RC_ASSERT(std::abs(scaled.low - wide.low) < 1e-9);
  RC_ASSERT(std::abs(scaled.high - wide.high) < 1e-9);
}

}  // namespace
}  // namespace lanework::evidence
