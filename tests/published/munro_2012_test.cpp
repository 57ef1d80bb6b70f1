// Frontal-plane projection angle as defined in Munro, Herrington and Carolan 2012, doi 10.1123/jsr.21.1.7:
// the bend of hip, knee and ankle in the frontal picture, positive where the knee falls inward. The numbers
// are worked by hand from the definition: 180 - acos of the corner at the knee.
#include <gtest/gtest.h>

#include "core/care/screens/screen_measures.h"
#include "core/care/screens/screen_reading.h"
#include "core/figure/measured_angles.h"
#include "tests/care/shipped_screens.h"

namespace lanework::figure {
namespace {

TEST(Munro2012, ProjectionAngleFromScreenPoints) {
  // A right leg seen from the front stands left of the middle of the picture; here the knee moves further left.
  EXPECT_NEAR(frontal_plane_projection_angle({0, 0.85}, {-0.05, 0.45}, {0, 0.05}, 0.1), -14.25, 0.05);
  // The same knee on the left leg, whose middle is on the other side: falls inward.
  EXPECT_NEAR(frontal_plane_projection_angle({0, 0.85}, {-0.05, 0.45}, {0, 0.05}, -0.1), 14.25, 0.05);
  EXPECT_NEAR(frontal_plane_projection_angle({0, 0.8}, {0.04, 0.4}, {0, 0}, 0.1), 11.42, 0.05);
  EXPECT_NEAR(frontal_plane_projection_angle({0, 0.8}, {0, 0.4}, {0, 0}, 0.1), 0, 1e-9);
}

// The figure's own knee angle in the front view is the same measure.
TEST(Munro2012, KneeAngleOfTheFrontView) {
  Angles a;
  a.at(LimbAngle::kHip, kLeft) = -6;
  a.at(LimbAngle::kKnee, kLeft) = 14;
  const Body body = body_of(View::kFront, a);
  const Limbs& l = body.limbs[kLeft];
  EXPECT_NEAR(frontal_plane_projection_angle(l.hip, l.knee, l.ankle, body.pelvis.x), 14, 1e-9);
}

}  // namespace
}  // namespace lanework::figure

namespace lanework::care::screens {
namespace {

// Printed: standard error 2.72 to 3.01 degrees, smallest detectable difference 7.54 to 8.93. The lower pair agrees with
// 1.96 x root 2 x error; 3.01 would give 8.34, so that the larger figure stands as printed.
TEST(Munro2012, TheSmallestDifferenceThatIsTold) {
  EXPECT_NEAR(detectable_change_of(2.72), 7.54, 0.005);
  EXPECT_NEAR(detectable_change_of(3.01), 8.34, 0.005);
  const ScreenTest& test = test::test_named("frontal-plane-angle");
  ASSERT_TRUE(test.change);
  EXPECT_EQ(test.change->value, 8.93);
  EXPECT_EQ(test.change->trials, 3);
}

TEST(Munro2012, NothingBelowItIsEverTold) {
  const ScreenTest& test = test::test_named("frontal-plane-angle");
  const auto at = [](double degrees) { return ScreenValue{"Q01", 0, Side::kLeft, Date{0}, degrees, degrees, 3}; };
  EXPECT_EQ(judge_change(test, at(15), at(15 - 8.9)), ChangeWords::kWithin);
  EXPECT_EQ(judge_change(test, at(5), at(5 + 8.93)), ChangeWords::kWithin);
  EXPECT_EQ(judge_change(test, at(15), at(6)), ChangeWords::kBetter);
  EXPECT_EQ(judge_change(test, at(6), at(15)), ChangeWords::kWorse);
}

}  // namespace
}  // namespace lanework::care::screens
