// Six subjects, four judges: Shrout PE, Fleiss JL 1979, Psychol Bull 86:420-428, doi 10.1037/0033-2909.86.2.420. The
// scores as in a package's documentation; the paper's two-digit values (.17 .29 .71 .44 .62 .91) from memory; further
// digits by R.
#include <gtest/gtest.h>

#include "core/evidence/reliability.h"

namespace lanework::evidence {
namespace {

const Scores kScores = {{9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}};

TEST(ShroutFleiss1979, MeanSquares) {
  const MeanSquares squares = intraclass_correlations(kScores, 0.95).mean_squares;
  EXPECT_NEAR(squares.subjects, 11.241667, 5e-7);
  EXPECT_NEAR(squares.within, 6.263889, 5e-7);
  EXPECT_NEAR(squares.raters, 32.486111, 5e-7);
  EXPECT_NEAR(squares.residual, 1.019444, 5e-7);
}

TEST(ShroutFleiss1979, AllSixForms) {
  const Correlations found = intraclass_correlations(kScores, 0.95);
  EXPECT_NEAR(found.one_random_way.estimate, 0.165742, 5e-7);
  EXPECT_NEAR(found.one_agreement.estimate, 0.289764, 5e-7);
  EXPECT_NEAR(found.one_consistency.estimate, 0.714841, 5e-7);
  EXPECT_NEAR(found.mean_random_way.estimate, 0.442797, 5e-7);
  EXPECT_NEAR(found.mean_agreement.estimate, 0.620051, 5e-7);
  EXPECT_NEAR(found.mean_consistency.estimate, 0.909316, 5e-7);
}

TEST(ShroutFleiss1979, Limits) {
  const Correlations found = intraclass_correlations(kScores, 0.95);
  EXPECT_NEAR(found.one_random_way.limits.low, -0.132932, 5e-7);
  EXPECT_NEAR(found.one_random_way.limits.high, 0.722560, 5e-7);
  EXPECT_NEAR(found.one_agreement.limits.low, 0.018787, 5e-7);
  EXPECT_NEAR(found.one_agreement.limits.high, 0.761084, 5e-7);
  EXPECT_NEAR(found.one_consistency.limits.low, 0.342465, 5e-7);
  EXPECT_NEAR(found.one_consistency.limits.high, 0.945858, 5e-7);
}

TEST(ShroutFleiss1979, ErrorOfAScore) {
  const MeanSquares squares = intraclass_correlations(kScores, 0.95).mean_squares;
  EXPECT_NEAR(error_of_consistency(squares), 1.009675, 5e-7);
  EXPECT_NEAR(error_of_agreement(squares, kScores.size()), 2.502776, 5e-7);
  EXPECT_NEAR(detectable_change(error_of_consistency(squares), 0.95), 2.798677, 1e-4);  // with 1.96
}

}  // namespace
}  // namespace lanework::evidence
