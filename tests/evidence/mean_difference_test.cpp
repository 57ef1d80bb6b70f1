// Student's hours of sleep gained by two drugs (Biometrika 1908, doi 10.1093/biomet/6.1.1); limits as R's t.test gives
// them (from memory of its documentation).
#include "core/evidence/mean_difference.h"

#include <gtest/gtest.h>

#include <vector>

namespace lanework::evidence {
namespace {

const std::vector<double> kFirst = {0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
const std::vector<double> kSecond = {1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};

TEST(MeanDifference, WelchOfStudentsSleep) {
  const auto found = welch_difference(kFirst, kSecond, 0.95);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->difference, -1.58, 1e-12);
  EXPECT_NEAR(found->degrees, 17.776, 5e-4);
  EXPECT_NEAR(found->difference / found->error, -1.8608, 5e-5);
  EXPECT_NEAR(found->limits.low, -3.3654832, 5e-8);
  EXPECT_NEAR(found->limits.high, 0.2054832, 5e-8);
}

TEST(MeanDifference, PairedOfStudentsSleep) {
  std::vector<double> differences;
  for (std::size_t i = 0; i < kFirst.size(); ++i) differences.push_back(kFirst[i] - kSecond[i]);
  const auto found = paired_difference(differences, 0.95);
  ASSERT_TRUE(found);
  EXPECT_NEAR(found->limits.low, -2.4598858, 5e-8);
  EXPECT_NEAR(found->limits.high, -0.7001142, 5e-8);
  EXPECT_EQ(found->degrees, 9);
}

TEST(MeanDifference, TooFewOrAllAlikeHaveNone) {
  EXPECT_FALSE(welch_difference(std::vector<double>{1}, kFirst, 0.95));
  EXPECT_FALSE(welch_difference(std::vector<double>{1, 1}, std::vector<double>{0.3, 0.3}, 0.95));
  EXPECT_TRUE(welch_difference(std::vector<double>{1, 1}, std::vector<double>{2, 3}, 0.95));
  EXPECT_FALSE(paired_difference(std::vector<double>{0.1, 0.1, 0.1}, 0.95));
  EXPECT_FALSE(paired_difference(std::vector<double>{}, 0.95));
}

}  // namespace
}  // namespace lanework::evidence
