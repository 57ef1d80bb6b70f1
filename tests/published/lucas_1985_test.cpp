// Counted-data sums: Lucas JM 1985, Technometrics 27:129-144, doi 10.1080/00401706.1985.10488030, tables 2 to 5 as
// quoted by a control-chart package: reference value 0.25, decision limit 10, mean 0.25. Further digits: an exact chain
// in R 4.2.2.
#include <gtest/gtest.h>

#include <array>
#include <vector>

#include "core/evidence/cusum.h"

namespace lanework::evidence {
namespace {

constexpr CusumScheme kMore{Watch::kMore, 4, 1, 40};
constexpr CusumScheme kFewer{Watch::kFewer, 4, 1, 40};

TEST(Lucas1985, RunLengths) {
  EXPECT_NEAR(run_length(kMore, 0.25, 0), 438, 0.5);
  EXPECT_NEAR(run_length(kMore, 0.25, 20), 333, 0.5);
  EXPECT_NEAR(run_length(kFewer, 0.25, 0), 437, 0.5);
  EXPECT_NEAR(run_length(kFewer, 0.25, 20), 318, 0.5);
  EXPECT_NEAR(run_length(kMore, 0.25, 0), 438.1250, 5e-5);
  EXPECT_NEAR(run_length(kMore, 0.25, 20), 333.1248, 5e-5);
  EXPECT_NEAR(run_length(kFewer, 0.25, 0), 436.7639, 5e-5);
  EXPECT_NEAR(run_length(kFewer, 0.25, 20), 318.3333, 5e-5);
}

TEST(Lucas1985, ReferenceValueOfTheLikelihoodRatio) {
  EXPECT_NEAR(reference_value(1, 2), 1.442695, 5e-7);
  EXPECT_NEAR(reference_value(2, 4), 2.885390, 5e-7);
  EXPECT_NEAR(reference_value(1, 1.5), 1.233152, 5e-7);
}

// The smallest limit that is long enough: one part less is not.
TEST(Lucas1985, LimitForAWantedRunLength) {
  for (const double wanted : {50.0, 100.0, 438.0, 1000.0}) {
    CusumScheme scheme = kMore;
    scheme.decision = decision_for(kMore, 0.25, wanted, 400);
    EXPECT_GE(run_length(scheme, 0.25, 0), wanted);
    scheme.decision -= 1;
    EXPECT_LT(run_length(scheme, 0.25, 0), wanted);
  }
  EXPECT_EQ(decision_for(kMore, 0.25, 438, 400), 40);
  EXPECT_EQ(decision_for(kMore, 0.25, 1e9, 60), 61);
}

TEST(Lucas1985, PathCountForCount) {
  const std::vector<std::int64_t> counts = {0, 1, 0, 2, 3, 1, 0, 4, 2, 1};
  const std::vector<double> expected = {0, 0, 0, 0.5, 2, 1.5, 0, 2.5, 3, 2.5};
  EXPECT_EQ(cusum_path({Watch::kMore, 2, 3, 1000}, counts, 0), expected);
}

}  // namespace
}  // namespace lanework::evidence
