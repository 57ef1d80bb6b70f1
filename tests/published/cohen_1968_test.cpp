// Agreement of two raters: Cohen J 1960, Educ Psychol Meas 20:37-46, doi 10.1177/001316446002000104, and 1968, Psychol
// Bull 70:213-220, doi 10.1037/h0026256, printed .492 and, with his weights of disagreement 0 1 3 / 1 0 6 / 3 6 0,
// .348; and Fleiss JL, Cohen J, Everitt BS 1969, Psychol Bull 72:323-327, doi 10.1037/h0028106. Counts as in a
// package's documentation; further digits by R.
#include <gtest/gtest.h>

#include "core/evidence/reliability.h"

namespace lanework::evidence {
namespace {

const Classed kTwoHundred = {{88, 14, 18}, {10, 40, 10}, {2, 6, 12}};

TEST(Cohen1968, UnweightedAndWeighted) {
  const Kappa plain = kappa(kTwoHundred, only_equal(3), 0.95);
  EXPECT_NEAR(plain.estimate, 0.492, 5e-4);
  EXPECT_NEAR(plain.estimate, 0.491525, 5e-7);
  EXPECT_NEAR(plain.error, 0.051002, 5e-7);
  // Disagreement of 6 is worth nothing, none is worth all.
  const AgreementWeights his = {{1, 5.0 / 6, 0.5}, {5.0 / 6, 1, 0}, {0.5, 0, 1}};
  EXPECT_NEAR(kappa(kTwoHundred, his, 0.95).estimate, 0.348, 5e-4);
  EXPECT_NEAR(kappa(kTwoHundred, his, 0.95).estimate, 0.347826, 5e-7);
  EXPECT_NEAR(kappa(kTwoHundred, quadratic_weights(3), 0.95).estimate, 0.454545, 5e-7);
  EXPECT_NEAR(kappa(kTwoHundred, linear_weights(3), 0.95).estimate, 0.473684, 5e-7);
}

TEST(Cohen1968, OtherTables) {
  const Classed fleiss = {{106, 10, 4}, {22, 28, 10}, {2, 12, 6}};
  EXPECT_NEAR(kappa(fleiss, only_equal(3), 0.95).estimate, 0.428571, 5e-7);
  const AgreementWeights weights = {{1, 0, 0.4444}, {0, 1, 0.6667}, {0.4444, 0.6667, 1}};
  EXPECT_NEAR(kappa(fleiss, weights, 0.95).estimate, 0.507070, 1e-5);
  // Watson PF, Petrie A 2010, Theriogenology 73:1167-1179, doi 10.1016/j.theriogenology.2010.01.003: 0.89 (0.86 to
  // 0.91).
  const Kappa watson = kappa({{596, 61}, {29, 987}}, only_equal(2), 0.95);
  EXPECT_NEAR(watson.estimate, 0.89, 5e-3);
  EXPECT_NEAR(watson.limits.low, 0.86, 5e-3);
  EXPECT_NEAR(watson.limits.high, 0.91, 5e-3);
}

}  // namespace
}  // namespace lanework::evidence
