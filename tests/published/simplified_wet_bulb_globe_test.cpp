// Simplified wet-bulb globe temperature of the Australian Bureau of Meteorology, as reprinted: vapour pressure, then
// the estimate. Tolerance 0.02: other formulas of vapour pressure shift it by 0.03.
#include <gtest/gtest.h>

#include "core/care/environment/wet_bulb.h"
#include "core/care/environment/wet_bulb_globe.h"

namespace lanework::care::environment {
namespace {

struct Row {
  double air;
  double humidity;
  double pressure;
  double value;
};

TEST(SimplifiedWetBulbGlobe, FromAirAndHumidity) {
  for (const Row& row : {Row{30, 50, 21.144, 29.26}, Row{35, 40, 22.407, 32.59}, Row{25, 60, 18.950, 25.56},
                         Row{20, 50, 11.661, 19.86}}) {
    EXPECT_NEAR(vapour_pressure({row.air}, {row.humidity}).pressure, row.pressure, 0.0015);
    EXPECT_NEAR(EstimatedWetBulbGlobe::simplified({row.air}, {row.humidity}).value().degrees, row.value, 0.02);
  }
}

}  // namespace
}  // namespace lanework::care::environment
