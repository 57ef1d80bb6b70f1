#include "core/evidence/leave_one_out.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numeric>
#include <vector>

namespace lanework::evidence {
namespace {

double mean(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

// Of a mean, leaving one out in turn gives back its standard error.
RC_GTEST_PROP(LeaveOneOut, OfAMeanIsItsStandardError, ()) {
  const int count = *rc::gen::inRange(2, 30);
  std::vector<double> values;
  for (int i = 0; i < count; ++i) values.push_back(*rc::gen::inRange(-1000, 1000) / 10.0);
  const double all = mean(values);
  std::vector<double> without;
  double squares = 0;
  for (const double value : values) {
    without.push_back((all * count - value) / (count - 1));
    squares += (value - all) * (value - all);
  }
  const LeftOut found = limits_by_leaving_out(all, without, 0.95);
  RC_ASSERT(std::abs(found.error - std::sqrt(squares / (count - 1) / count)) < 1e-9);
  RC_ASSERT(found.degrees == count - 1);
}

TEST(LeaveOneOut, ReachesAsFarAsStudentsT) {
  // 1, 2, 3: mean 2, standard error 1/sqrt(3); t of two degrees at 95 % is 4.302653.
  const LeftOut found = limits_by_leaving_out(2, std::vector<double>{2.5, 2, 1.5}, 0.95);
  EXPECT_NEAR(found.error, 1 / std::sqrt(3), 1e-12);
  EXPECT_NEAR(found.limits.high, 2 + 4.302653 / std::sqrt(3), 1e-6);
  EXPECT_NEAR(found.limits.low, 2 - 4.302653 / std::sqrt(3), 1e-6);
}

}  // namespace
}  // namespace lanework::evidence
