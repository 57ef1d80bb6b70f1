#include "core/figure/measured_angles.h"

#include <cmath>

#include "core/figure/trigonometry.h"

namespace lanework::figure {
namespace {

// Angle of a hanging segment forward (right) of straight down.
double hanging(Point from, Point to) { return direction_of(to.x - from.x, from.y - to.y); }
// Angle of a standing segment right of straight up.
double rising(Point from, Point to) { return direction_of(to.x - from.x, to.y - from.y); }

// Wrapped into the range a joint is written in: from -90 up to 270.
double joint_range(double angle) {
  const double a = wrapped(angle);
  return a < -90 ? a + 360 : a;
}

}  // namespace

Angles angles_of(View view, const Body& body) {
  Angles out;
  const double trunk = rising(body.pelvis, body.waist);
  const double upper = rising(body.waist, body.neck);
  out[MiddleAngle::kTrunk] = trunk;
  out[MiddleAngle::kSpine] = wrapped(upper - trunk);
  out[MiddleAngle::kNeck] = wrapped(rising(body.neck, body.head) - upper);
  for (int side = 0; side < 2; ++side) {
    const Limbs& l = body.limbs[static_cast<std::size_t>(side)];
    const double arm = hanging(l.shoulder, l.elbow);
    const double fore = hanging(l.elbow, l.wrist);
    const double hand = hanging(l.wrist, l.hand);
    const double thigh = hanging(l.hip, l.knee);
    const double shank = hanging(l.knee, l.ankle);
    if (view == View::kSide) {
      out.at(LimbAngle::kShoulder, side) = joint_range(arm + upper);
      out.at(LimbAngle::kElbow, side) = wrapped(fore - arm);
      out.at(LimbAngle::kWrist, side) = wrapped(hand - fore);
      out.at(LimbAngle::kHip, side) = joint_range(thigh + trunk);
      out.at(LimbAngle::kKnee, side) = wrapped(thigh - shank);
      out.at(LimbAngle::kAnkle, side) = wrapped(hanging(l.heel, l.ball) - shank - 90);
    } else {
      const double out_way = side == kLeft ? 1.0 : -1.0;
      out.at(LimbAngle::kShoulder, side) = joint_range(out_way * (arm + upper));
      out.at(LimbAngle::kElbow, side) = wrapped(out_way * (arm - fore));
      out.at(LimbAngle::kWrist, side) = wrapped(out_way * (fore - hand));
      out.at(LimbAngle::kHip, side) = wrapped(out_way * (thigh + trunk));
      out.at(LimbAngle::kKnee, side) = wrapped(out_way * (shank - thigh));
    }
  }
  return out;
}

double included_angle(Point a, Point b, Point c) {
  return std::fabs(wrapped(direction_of(a.y - b.y, a.x - b.x) - direction_of(c.y - b.y, c.x - b.x)));
}

double frontal_plane_projection_angle(Point hip, Point knee, Point ankle, double middle_x) {
  const double bend = 180 - included_angle(hip, knee, ankle);
  // Which side of the line from ankle to hip the knee is on, and which side the middle is on.
  const auto side_of_line = [&](double x, double y) {
    return (hip.x - ankle.x) * (y - ankle.y) - (hip.y - ankle.y) * (x - ankle.x);
  };
  return side_of_line(knee.x, knee.y) * side_of_line(middle_x, knee.y) >= 0 ? bend : -bend;
}

}  // namespace lanework::figure
