// Frontal-plane projection angle as defined in Munro, Herrington and Carolan 2012, doi 10.1123/jsr.21.1.7:
// the bend of hip, knee and ankle in the frontal picture, positive where the knee falls inward. The numbers
// are worked by hand from the definition: 180 - acos of the corner at the knee.
#include <gtest/gtest.h>

#include "core/figure/measured_angles.h"

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
