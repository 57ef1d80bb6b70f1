// Stull R 2011, J Appl Meteorol Climatol 50:2267-9: wet bulb from air and relative humidity.
#include <gtest/gtest.h>

#include "core/care/environment/wet_bulb.h"

namespace lanework::care::environment {
namespace {

TEST(Stull2011, WetBulb) {
  EXPECT_NEAR(wet_bulb({20}, {50})->degrees, 13.70, 0.02);
  EXPECT_NEAR(wet_bulb({30}, {60})->degrees, 24.00, 0.02);
}

TEST(Stull2011, NoneWhereItWasNotFitted) {
  EXPECT_FALSE(wet_bulb({20}, {4.9}));
  EXPECT_FALSE(wet_bulb({20}, {99.1}));
  EXPECT_FALSE(wet_bulb({50.1}, {50}));
}

}  // namespace
}  // namespace lanework::care::environment
