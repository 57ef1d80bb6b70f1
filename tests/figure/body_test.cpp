#include "core/figure/body.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/figure/skeleton.h"

namespace lanework::figure {
namespace {

constexpr double kClose = 1e-9;

void expect_at(const Point& p, double x, double y, const char* what) {
  EXPECT_NEAR(p.x, x, kClose) << what;
  EXPECT_NEAR(p.y, y, kClose) << what;
}

// Heights of the standing figure in Winter (2009), fig. 4.1, fractions of stature (from memory): hip 0.530,
// knee 0.285, ankle 0.039, shoulder 0.818, elbow 0.630 and wrist 0.485. The last three are printed rounded;
// shoulder less upper arm is 0.632, less forearm 0.486.
TEST(Body, StandsStraightAtZero) {
  for (const View view : {View::kSide, View::kFront}) {
    const Body body = moved(body_of(view, {}), 0, skeleton::kHipHeight);
    EXPECT_NEAR(body.neck.y, 0.818, kClose);
    for (const Limbs& l : body.limbs) {
      EXPECT_NEAR(l.knee.y, 0.285, kClose);
      EXPECT_NEAR(l.ankle.y, 0.039, kClose);
      EXPECT_NEAR(l.heel.y, 0, kClose);
      EXPECT_NEAR(l.ball.y, 0, kClose);
      EXPECT_NEAR(l.elbow.y, 0.630, 0.003);
      EXPECT_NEAR(l.wrist.y, 0.485, 0.003);
    }
    EXPECT_NEAR(body.head.y + skeleton::kHeadRadius, 1, kClose);
  }
}

// Worked by hand: sitting squarely, trunk upright, thigh level, shank hanging.
TEST(Body, HipAndKneeAtRightAngles) {
  Angles a;
  a.at(LimbAngle::kHip, kNear) = 90;
  a.at(LimbAngle::kKnee, kNear) = 90;
  const Limbs l = body_of(View::kSide, a).limbs[kNear];
  expect_at(l.knee, 0.245, 0, "knee");
  expect_at(l.ankle, 0.245, -0.246, "ankle");
  expect_at(l.heel, 0.245 - 0.036, -0.246 - 0.039, "heel");
  expect_at(l.toe, 0.245 + 0.152 - 0.036, -0.246 - 0.039, "toe");
}

// Worked by hand: trunk 30 forward, hip 60, knee 30: thigh 30 forward of the vertical, shank vertical.
// sin 30 = 0.5, cos 30 = 0.8660254038.
TEST(Body, AnglesAddAlongTheChain) {
  Angles a;
  a[MiddleAngle::kTrunk] = 30;
  a.at(LimbAngle::kHip, kFar) = 60;
  a.at(LimbAngle::kKnee, kFar) = 30;
  a.at(LimbAngle::kShoulder, kFar) = 120;
  a.at(LimbAngle::kElbow, kFar) = 90;
  const Body body = body_of(View::kSide, a);
  const Limbs l = body.limbs[kFar];
  const double c = 0.86602540378443865;
  expect_at(body.neck, 0.288 * 0.5, 0.288 * c, "neck");
  expect_at(l.knee, 0.245 * 0.5, -0.245 * c, "knee");
  expect_at(l.ankle, 0.245 * 0.5, -0.245 * c - 0.246, "ankle");
  // Upper arm 120 - 30 = 90 forward: level; the forearm then points straight up.
  expect_at(l.elbow, 0.288 * 0.5 + 0.186, 0.288 * c, "elbow");
  expect_at(l.wrist, 0.288 * 0.5 + 0.186, 0.288 * c + 0.146, "wrist");
}

// Worked by hand, front view: arms level, elbows turned up like the corners of a goal.
TEST(Body, GoalpostArmsFromTheFront) {
  Angles a;
  for (int side = 0; side < 2; ++side) {
    a.at(LimbAngle::kShoulder, side) = 90;
    a.at(LimbAngle::kElbow, side) = -90;
  }
  const Body body = body_of(View::kFront, a);
  expect_at(body.limbs[kLeft].elbow, 0.105 + 0.186, 0.288, "left elbow");
  expect_at(body.limbs[kLeft].wrist, 0.105 + 0.186, 0.288 + 0.146, "left wrist");
  expect_at(body.limbs[kRight].wrist, -0.105 - 0.186, 0.288 + 0.146, "right wrist");
}

// Worked by hand, front view: thigh lifted level towards the eye and turned 30 out, shank hanging straight.
TEST(Body, BentHipCarriesTheKneeSideways) {
  Angles a;
  a.at(LimbAngle::kHip, kLeft) = 30;
  a.at(LimbAngle::kHipAside, kLeft) = 90;
  a.at(LimbAngle::kKneeAside, kLeft) = 90;
  const Limbs l = body_of(View::kFront, a).limbs[kLeft];
  expect_at(l.knee, 0.052 + 0.245 * 0.5, 0, "knee");
  EXPECT_NEAR(l.knee.z, 0.245 * 0.86602540378443865, kClose);
  expect_at(l.ankle, 0.052 + 0.245 * 0.5, -0.246, "ankle");
}

// The same lengths in every posture, whatever the view.
TEST(Body, SegmentsKeepTheirLengths) {
  const auto length = [](Point p, Point q) {
    const Point d = q - p;
    return std::sqrt(d.x * d.x + d.y * d.y + d.z * d.z);
  };
  for (const View view : {View::kSide, View::kFront}) {
    Angles a;
    int k = 7;
    for (const AngleRow& row : angle_rows(view)) {
      k = k * 31 % 97;
      const double angle = row.least + (row.most - row.least) * k / 97.0;
      if (row.limb) {
        a.at(static_cast<LimbAngle>(row.slot), k % 2) = angle;
      } else {
        a[static_cast<MiddleAngle>(row.slot)] = angle;
      }
    }
    const Body body = body_of(view, a);
    for (const Limbs& l : body.limbs) {
      EXPECT_NEAR(length(l.hip, l.knee), 0.245, kClose);
      EXPECT_NEAR(length(l.knee, l.ankle), 0.246, kClose);
      EXPECT_NEAR(length(l.shoulder, l.elbow), 0.186, kClose);
      EXPECT_NEAR(length(l.elbow, l.wrist), 0.146, kClose);
      EXPECT_NEAR(length(l.wrist, l.fingertip), 0.108, kClose);
    }
  }
}

}  // namespace
}  // namespace lanework::figure
