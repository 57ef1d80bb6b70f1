// Lovell, Whalan, Marshall et al. 2018, Scand J Med Sci Sports 28(10): eccentric work three days after a
// match of a six-day cycle left soreness the day before the next; so none on the day before, less two days
// before, and nothing new on either.
#include <gtest/gtest.h>

#include "tests/catalogue/shipped.h"

namespace lanework::catalogue {
namespace {

TEST(Lovell2018, EccentricWorkKeepsAwayFromTheMatch) {
  const std::vector<MatchDistance>& match = test::shipped_catalogue().limits.match;
  ASSERT_GE(match.size(), 4U);
  EXPECT_EQ(match[0].eccentric_percent, 0);
  EXPECT_EQ(match[1].eccentric_percent, 0);
  EXPECT_LT(match[2].eccentric_percent, 100);
  EXPECT_EQ(match[3].eccentric_percent, 100);
  EXPECT_FALSE(match[0].new_drills);  // common practice: nothing new on the day itself
  for (std::size_t i = 2; i < match.size(); ++i) {
    EXPECT_GE(match[i].eccentric_percent, match[i - 1].eccentric_percent);
  }
}

}  // namespace
}  // namespace lanework::catalogue
