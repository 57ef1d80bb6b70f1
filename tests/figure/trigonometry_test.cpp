#include "core/figure/trigonometry.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

namespace lanework::figure {
namespace {

constexpr double kRadian = 3.14159265358979323846 / 180;

TEST(Trigonometry, ExactAtTheQuarters) {
  EXPECT_EQ(sine(0), 0);
  EXPECT_EQ(sine(90), 1);
  EXPECT_EQ(sine(-90), -1);
  EXPECT_EQ(cosine(0), 1);
  EXPECT_EQ(cosine(90), 0);
  EXPECT_EQ(cosine(180), -1);
  EXPECT_NEAR(sine(30), 0.5, 1e-15);
  EXPECT_NEAR(cosine(60), 0.5, 1e-15);
}

// The C library's functions are the outside here.
TEST(Trigonometry, AgreesWithTheMathLibrary) {
  EXPECT_TRUE(rc::check([] {
    const double degrees = *rc::gen::inRange(-7200000, 7200000) / 10000.0;
    RC_ASSERT(std::fabs(sine(degrees) - std::sin(degrees * kRadian)) < 1e-12);
    RC_ASSERT(std::fabs(cosine(degrees) - std::cos(degrees * kRadian)) < 1e-12);
    const double x = *rc::gen::inRange(-1000, 1000) / 500.0;
    const double y = *rc::gen::inRange(-1000, 1000) / 500.0;
    if (x != 0 || y != 0) RC_ASSERT(std::fabs(wrapped(direction_of(y, x) - std::atan2(y, x) / kRadian)) < 1e-9);
    const double c = *rc::gen::inRange(-1000, 1001) / 1000.0;
    RC_ASSERT(std::fabs(arc_cosine(c) - std::acos(c) / kRadian) < 1e-6);
  }));
}

TEST(Trigonometry, WrapsIntoAHalfTurnEitherWay) {
  EXPECT_EQ(wrapped(180), 180);
  EXPECT_EQ(wrapped(-180), 180);
  EXPECT_EQ(wrapped(190), -170);
  EXPECT_EQ(wrapped(-725), -5);
}

}  // namespace
}  // namespace lanework::figure
