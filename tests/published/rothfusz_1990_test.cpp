// Heat index of the National Weather Service's equation page (Rothfusz LP 1990, SR 90-23), worked from the equation,
// and the same cells of its printed chart. Cells in which the chart is known to differ (90 F 45 %, 90 F 70 %, 80 F 95
// %) are not tested on.
#include <gtest/gtest.h>

#include <cmath>

#include "core/care/environment/heat_index.h"

namespace lanework::care::environment {
namespace {

struct Row {
  double air;
  double humidity;
  double value;
  int chart;  // 0: not on it
};

constexpr Row kRows[] = {{82, 60, 84.43, 84},   {86, 50, 87.89, 88},    {88, 60, 95.15, 95},    {90, 40, 90.68, 91},
                         {90, 60, 99.68, 100},  {92, 55, 101.45, 101},  {94, 50, 102.89, 103},  {96, 45, 104.04, 104},
                         {98, 50, 112.78, 113}, {100, 40, 109.26, 109}, {104, 55, 137.36, 137}, {86, 90, 105.39, 105},
                         {84, 90, 98.34, 98},   {100, 10, 94.12, 0},    {95, 10, 89.45, 0}};

TEST(Rothfusz1990, TheEquation) {
  for (const Row& row : kRows) {
    const HeatIndex found = heat_index({row.air}, {row.humidity});
    EXPECT_NEAR(found.value.degrees, row.value, 0.05) << row.air << " F " << row.humidity << " %";
    EXPECT_NE(found.form, HeatIndexForm::kSimple);
    EXPECT_EQ(found.on_chart, row.chart != 0);
  }
}

TEST(Rothfusz1990, ThePrintedChart) {
  for (const Row& row : kRows) {
    if (row.chart == 0) continue;
    EXPECT_EQ(std::lround(heat_index({row.air}, {row.humidity}).value.degrees), row.chart) << row.air;
  }
  EXPECT_NEAR(heat_index({80}, {40}).value.degrees, 80, 0.5);
}

TEST(Rothfusz1990, TheSimpleFormBelow80) {
  const HeatIndex found = heat_index({80}, {40});
  EXPECT_EQ(found.form, HeatIndexForm::kSimple);
  EXPECT_NEAR(found.value.degrees, 79.58, 0.005);
  EXPECT_NEAR(unadjusted_heat_index({80}, {40}).degrees, 79.93, 0.005);
}

TEST(Rothfusz1990, TheAdjustments) {
  EXPECT_NEAR(unadjusted_heat_index({86}, {90}).degrees, 105.29, 0.005);
  EXPECT_EQ(heat_index({86}, {90}).form, HeatIndexForm::kFullHumidAir);
  EXPECT_NEAR(unadjusted_heat_index({84}, {90}).degrees, 98.04, 0.005);
  EXPECT_NEAR(unadjusted_heat_index({100}, {10}).degrees, 94.75, 0.005);
  EXPECT_NEAR(unadjusted_heat_index({95}, {10}).degrees, 90.20, 0.005);
  EXPECT_EQ(heat_index({95}, {10}).form, HeatIndexForm::kFullDryAir);
}

// 'The simple formula averaged with the temperature' can be read in two ways, which differ near 80 F.
TEST(Rothfusz1990, TheHigherOfTheTwoReadings) {
  EXPECT_NEAR(simple_heat_index({79}, {80}).degrees, 80.36, 0.005);
  EXPECT_NEAR((simple_heat_index({79}, {80}).degrees + 79) / 2, 79.68, 0.005);
  EXPECT_NEAR(heat_index({79}, {80}).value.degrees, 82.19, 0.005);
}

}  // namespace
}  // namespace lanework::care::environment
