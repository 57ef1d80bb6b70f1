#include "core/figure/measured_angles.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/figure/skeleton.h"
#include "core/figure/trigonometry.h"

namespace lanework::figure {
namespace {

constexpr double kRadian = 3.14159265358979323846 / 180;
constexpr double kNoise = 0.002;  // 3 mm on a child of 1.5 m

// The angles that a picture shows: those in its plane, without the feet in the front view.
bool seen(View view, const AngleRow& row) {
  if (!row.limb) {
    const auto angle = static_cast<MiddleAngle>(row.slot);
    return angle != MiddleAngle::kTurn && angle != MiddleAngle::kTrunkAside;
  }
  switch (static_cast<LimbAngle>(row.slot)) {
    case LimbAngle::kShoulderAside:
    case LimbAngle::kElbowAside:
    case LimbAngle::kHipAside:
    case LimbAngle::kKneeAside:
    case LimbAngle::kFoot:
      return false;
    case LimbAngle::kAnkle:
      return view == View::kSide;
    default:
      return true;
  }
}

Angles any_angles(View view) {
  Angles a;
  for (const AngleRow& row : angle_rows(view)) {
    if (!seen(view, row)) continue;
    for (int side = 0; side < (row.limb ? 2 : 1); ++side) {
      const int tenths = *rc::gen::inRange(static_cast<int>(row.least) * 10, static_cast<int>(row.most) * 10);
      if (row.limb) {
        a.at(static_cast<LimbAngle>(row.slot), side) = tenths / 10.0;
      } else {
        a[static_cast<MiddleAngle>(row.slot)] = tenths / 10.0;
      }
    }
  }
  return a;
}

void shake(Point& p) {
  p.x += *rc::gen::inRange(-1000, 1001) / 1000.0 * kNoise;
  p.y += *rc::gen::inRange(-1000, 1001) / 1000.0 * kNoise;
}

void shake(Body& body) {
  for (Point* p : {&body.pelvis, &body.waist, &body.neck, &body.head}) shake(*p);
  for (Limbs& l : body.limbs) {
    for (Point* p : {&l.shoulder, &l.elbow, &l.wrist, &l.hand, &l.hip, &l.knee, &l.ankle, &l.heel, &l.ball}) shake(*p);
  }
}

// A segment whose ends move by at most the noise turns by at most asin(2 sqrt(2) noise / length); a joint's
// angle errs by at most the sum of its two segments' turns. The shortest segments are the palm (0.050) and
// the foot from heel to ball (0.112).
double worst_turn(double length) { return std::asin(2 * std::sqrt(2.0) * kNoise / length) / kRadian; }

double tolerance(const AngleRow& row) {
  if (!row.limb) {
    switch (static_cast<MiddleAngle>(row.slot)) {
      case MiddleAngle::kTrunk:
        return worst_turn(skeleton::kLowerTrunk);
      case MiddleAngle::kSpine:
        return worst_turn(skeleton::kLowerTrunk) + worst_turn(skeleton::kUpperTrunk);
      default:
        return worst_turn(skeleton::kUpperTrunk) + worst_turn(skeleton::kHeadCentre);
    }
  }
  switch (static_cast<LimbAngle>(row.slot)) {
    case LimbAngle::kShoulder:
      return worst_turn(skeleton::kUpperTrunk) + worst_turn(skeleton::kUpperArm);
    case LimbAngle::kElbow:
      return worst_turn(skeleton::kUpperArm) + worst_turn(skeleton::kForearm);
    case LimbAngle::kWrist:
      return worst_turn(skeleton::kForearm) + worst_turn(skeleton::kPalm);
    case LimbAngle::kHip:
      return worst_turn(skeleton::kLowerTrunk) + worst_turn(skeleton::kThigh);
    case LimbAngle::kKnee:
      return worst_turn(skeleton::kThigh) + worst_turn(skeleton::kShank);
    default:
      return worst_turn(skeleton::kShank) + worst_turn(skeleton::kHeelBehind + skeleton::kBallAhead);
  }
}

// The posture of a kneeling lower is printed as an included angle of 126.0 degrees in doi
// 10.3389/fspor.2021.629606; as knee flexion that is 54.0.
TEST(MeasuredAngles, FlexionIsWhatTheIncludedAngleLeaves) {
  const Point hip = {0, 0.2};
  const Point knee = {0, 0};
  const Point ankle = {0.2 * sine(126), 0.2 * cosine(126)};
  EXPECT_NEAR(included_angle(hip, knee, ankle), 126.0, 1e-9);
  EXPECT_NEAR(180 - included_angle(hip, knee, ankle), 54.0, 1e-9);
}

TEST(MeasuredAngles, ComeBackFromShakenPoints) {
  for (const View view : {View::kSide, View::kFront}) {
    EXPECT_TRUE(rc::check([view] {
      const Angles written = any_angles(view);
      Body body = moved(body_of(view, written), 0.3, 0.5);
      const Angles exact = angles_of(view, body);
      shake(body);
      const Angles found = angles_of(view, body);
      for (const AngleRow& row : angle_rows(view)) {
        if (!seen(view, row)) continue;
        for (int side = 0; side < (row.limb ? 2 : 1); ++side) {
          const auto of = [&](const Angles& a) {
            return row.limb ? a.at(static_cast<LimbAngle>(row.slot), side) : a[static_cast<MiddleAngle>(row.slot)];
          };
          RC_ASSERT(std::fabs(wrapped(of(exact) - of(written))) < 1e-7);
          RC_ASSERT(std::fabs(wrapped(of(found) - of(written))) <= tolerance(row));
        }
      }
    }));
  }
}

}  // namespace
}  // namespace lanework::figure
