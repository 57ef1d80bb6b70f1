// Wet-bulb globe temperature from its thermometers, as every authority's bands have it: 0.7, 0.2 and 0.1 outdoors, 0.7
// and 0.3 indoors (the latter from memory).
#include "core/care/environment/wet_bulb_globe.h"

#include <gtest/gtest.h>

namespace lanework::care::environment {
namespace {

TEST(WetBulbGlobe, FromThermometers) {
  EXPECT_NEAR(MeasuredWetBulbGlobe::outdoors({25}, {40}, {32}).value().value().degrees, 28.70, 0.005);
  EXPECT_NEAR(MeasuredWetBulbGlobe::outdoors({22}, {38}, {30}).value().value().degrees, 26.00, 0.005);
  EXPECT_NEAR(MeasuredWetBulbGlobe::indoors({22}, {25}, {}).value().value().degrees, 22.90, 0.005);
}

}  // namespace
}  // namespace lanework::care::environment
