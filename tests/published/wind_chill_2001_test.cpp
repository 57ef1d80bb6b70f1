// Wind chill, National Weather Service 2001: worked from the equations of both unit systems, and the same cells of the
// printed chart.
#include <gtest/gtest.h>

#include <cmath>

#include "core/care/environment/wind_chill.h"

namespace lanework::care::environment {
namespace {

struct Row {
  double air;
  double wind;
  double value;
  int chart;
};

constexpr Row kRows[] = {{40, 5, 36.47, 36},   {30, 10, 21.25, 21},  {25, 20, 10.80, 11},   {20, 15, 6.22, 6},
                         {0, 15, -19.40, -19}, {0, 30, -25.87, -26}, {-10, 10, -28.33, -28}};

TEST(WindChill2001, FahrenheitAndMilesPerHour) {
  for (const Row& row : kRows) {
    const auto found = wind_chill(Fahrenheit{row.air}, MilesPerHour{row.wind});
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->degrees, row.value, 0.05);
    EXPECT_EQ(std::lround(found->degrees), row.chart);
  }
}

TEST(WindChill2001, CelsiusAndKilometresPerHour) {
  EXPECT_NEAR(wind_chill(Celsius{-10}, KilometresPerHour{20})->degrees, -17.86, 0.05);
  EXPECT_NEAR(wind_chill(Celsius{0}, KilometresPerHour{20})->degrees, -5.24, 0.05);
  EXPECT_NEAR(wind_chill(Celsius{-10}, KilometresPerHour{30})->degrees, -19.52, 0.05);
}

// Copies of the equation go round in which the last term has no temperature.
TEST(WindChill2001, TheMisprintDoesNotAppear) {
  for (const Row& row : kRows) {
    const double pull = std::pow(row.wind, 0.16);
    const double misprint = 35.74 + 0.6215 * row.air - 35.75 * pull + 0.4275 * pull;
    EXPECT_GT(std::abs(wind_chill(Fahrenheit{row.air}, MilesPerHour{row.wind})->degrees - misprint), 0.5) << row.air;
  }
}

TEST(WindChill2001, OutsideItsLimitsThereIsNone) {
  EXPECT_FALSE(wind_chill(Fahrenheit{50.1}, MilesPerHour{20}));
  EXPECT_FALSE(wind_chill(Fahrenheit{20}, MilesPerHour{2.9}));
  EXPECT_FALSE(wind_chill(Celsius{10.1}, KilometresPerHour{20}));
  EXPECT_FALSE(wind_chill(Celsius{-5}, KilometresPerHour{4.7}));
  EXPECT_TRUE(wind_chill(Fahrenheit{50}, MilesPerHour{3}));
}

}  // namespace
}  // namespace lanework::care::environment
