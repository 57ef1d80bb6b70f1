#include "core/clock/breaks.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace lanework::clock {
namespace {

std::vector<Seconds> parts(const std::vector<int>& seconds) {
  std::vector<Seconds> out;
  for (const int count : seconds) out.emplace_back(count);
  return out;
}

TEST(Breaks, OneStandsAtTheHalf) {
  EXPECT_EQ(breaks_before(parts({100, 100, 100, 100}), 1), (std::vector<int>{0, 0, 1, 0}));
  EXPECT_EQ(breaks_before(parts({300, 60, 60}), 1), (std::vector<int>{0, 1, 0}));
}

TEST(Breaks, TwoStandAtTheThirds) {
  EXPECT_EQ(breaks_before(parts({50, 50, 50, 50, 50, 50}), 2), (std::vector<int>{0, 0, 1, 0, 1, 0}));
}

TEST(Breaks, TheEarlierOfTwoGapsAsNear) {
  EXPECT_EQ(breaks_before(parts({100, 100, 100}), 1), (std::vector<int>{0, 1, 0}));
}

TEST(Breaks, SeveralInOneGapAndAllBeforeASingleDrill) {
  EXPECT_EQ(breaks_before(parts({10, 10}), 3), (std::vector<int>{0, 3}));
  EXPECT_EQ(breaks_before(parts({10}), 3), (std::vector<int>{3}));
  EXPECT_TRUE(breaks_before({}, 2).empty());
  EXPECT_EQ(breaks_before(parts({10, 10}), 0), (std::vector<int>{0, 0}));
}

RC_GTEST_PROP(Breaks, AllStandAndNeverFurtherThanHalfTheLongestDrill, ()) {
  const auto seconds = *rc::gen::container<std::vector<int>>(rc::gen::inRange(5, 400));
  RC_PRE(seconds.size() >= 2);
  const int count = *rc::gen::inRange(1, 7);
  const std::vector<int> before = breaks_before(parts(seconds), count);
  RC_ASSERT(before.front() == 0);
  RC_ASSERT(std::accumulate(before.begin(), before.end(), 0) == count);
  const double whole = std::accumulate(seconds.begin(), seconds.end(), 0);
  const double longest = *std::max_element(seconds.begin(), seconds.end());
  double elapsed = 0;
  int k = 0;
  for (std::size_t i = 0; i < seconds.size(); ++i) {
    for (int b = 0; b < before[i]; ++b) {
      const double wished = ++k * whole / (count + 1);
      const bool inside = wished >= seconds.front() && wished <= whole - seconds.back();
      RC_ASSERT(!inside || std::abs(elapsed - wished) <= longest / 2 + 1e-9);
    }
    elapsed += seconds[i];
  }
}

}  // namespace
}  // namespace lanework::clock
