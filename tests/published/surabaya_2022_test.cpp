// Comfortable walking of 170 primary pupils over 10 m, Surabaya PMR journal 2022: m/s at 8 to 12 years.
#include <gtest/gtest.h>

#include <array>

#include "tests/catalogue/shipped.h"

namespace lanework::catalogue {
namespace {

TEST(Surabaya2022, WalkingSpeedsOfChildren) {
  constexpr std::array<int, 5> kMillimetresPerSecond = {1230, 1240, 1240, 1310, 1270};
  const Gait* walk = test::shipped_catalogue().gait("walk");
  ASSERT_NE(walk, nullptr);
  for (int age = 8; age <= 12; ++age) {
    EXPECT_EQ(gait_speed(*walk, age).count, kMillimetresPerSecond[static_cast<std::size_t>(age - 8)]) << age;
  }
  // Standard deviation about 0.2 m/s of about 1.25: 0.16 of the mean.
  EXPECT_NEAR(walk->spread_thousandths, 160, 10);
}

}  // namespace
}  // namespace lanework::catalogue
