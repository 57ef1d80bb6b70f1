#include "core/figure/body.h"

#include <algorithm>
#include <cmath>

#include "core/figure/skeleton.h"
#include "core/figure/trigonometry.h"

namespace lanework::figure {
namespace {

namespace s = skeleton;

// The frame a limb hangs in: how far its plane of rotation is turned, clockwise in the picture.
struct Frame {
  double in_plane = 0;  // lean of the trunk in the picture
  double aside = 0;     // bend of the trunk towards the eye (front view)
};

// A unit vector hanging down from a frame, turned by 'turn' in the picture and 'aside' out of it.
// Side view: turn is flexion, aside abduction; front view: turn is abduction, aside flexion. Abduction is
// measured from the sagittal plane, so a bent hip still carries the knee sideways.
Point hanging(View view, int side, Frame frame, double turn, double aside) {
  if (view == View::kSide) {
    const double phi = turn - frame.in_plane;
    const double out = side == kNear ? 1.0 : -1.0;
    return {cosine(aside) * sine(phi), -cosine(aside) * cosine(phi), out * sine(aside)};
  }
  const double out = side == kLeft ? 1.0 : -1.0;
  const double flexed = aside - frame.aside;
  const double x = out * sine(turn);
  const double y = -cosine(turn) * cosine(flexed);
  const double z = cosine(turn) * sine(flexed);
  const double c = cosine(frame.in_plane);
  const double n = sine(frame.in_plane);
  return {c * x + n * y, -n * x + c * y, z};
}

// A unit vector standing up in a frame.
Point rising(View view, Frame frame) {
  const double c = view == View::kFront ? cosine(frame.aside) : 1.0;
  const double z = view == View::kFront ? sine(frame.aside) : 0.0;
  return {c * sine(frame.in_plane), c * cosine(frame.in_plane), z};
}

// Across the trunk towards the given side; turned chests are seen narrower (front) or wider (side).
Point across(View view, int side, Frame frame, double turn) {
  const double out = side == 0 ? 1.0 : -1.0;
  const Point ahead = {cosine(frame.in_plane), -sine(frame.in_plane), 0};
  if (view == View::kSide) {
    return (-out * sine(turn)) * ahead + Point{0, 0, out * cosine(turn)};
  }
  return (out * cosine(turn)) * ahead + Point{0, 0, -out * sine(turn)};
}

// Perpendicular to a limb's upper segment, towards its flexion: what an elbow or a knee bends in. In the front
// view this is the direction in which 'aside' grows, so a bent elbow of a raised arm points at the eye.
Point bending(View view, int side, Frame frame, double turn, double aside) {
  if (view == View::kSide) return hanging(view, side, frame, turn + 90, aside);
  const double flexed = aside - frame.aside;
  const double y = sine(flexed);
  return {sine(frame.in_plane) * y, cosine(frame.in_plane) * y, cosine(flexed)};
}

void place_arm(View view, int side, Frame upper, const Angles& a, Limbs& limb) {
  const double turn = a.at(LimbAngle::kShoulder, side);
  const double aside = a.at(LimbAngle::kShoulderAside, side);
  // In the front view a bent elbow turns the forearm back towards the middle; in the side view forward.
  const double bend = view == View::kSide ? 1.0 : -1.0;
  const double fore = turn + bend * a.at(LimbAngle::kElbow, side);
  const double flexed = a.at(LimbAngle::kElbowAside, side);
  const Point towards = bending(view, side, upper, fore, aside);
  const auto lower = [&](double in_plane) {
    return cosine(flexed) * hanging(view, side, upper, in_plane, aside) + sine(flexed) * towards;
  };
  limb.elbow = limb.shoulder + s::kUpperArm * hanging(view, side, upper, turn, aside);
  limb.wrist = limb.elbow + s::kForearm * lower(fore);
  const Point hand = lower(fore + bend * a.at(LimbAngle::kWrist, side));
  limb.hand = limb.wrist + s::kPalm * hand;
  limb.fingertip = limb.wrist + s::kHand * hand;
}

void place_leg(View view, int side, Frame lower, const Angles& a, FootRule rule, Limbs& limb) {
  const double turn = a.at(LimbAngle::kHip, side);
  const double aside = a.at(LimbAngle::kHipAside, side);
  const double knee = a.at(LimbAngle::kKnee, side);
  // Side view: the heel comes back; front view: the knee falls inward, the shank runs outward under it.
  const double below = view == View::kSide ? turn - knee : turn + knee;
  const double flexed = a.at(LimbAngle::kKneeAside, side);
  const Point down = hanging(view, side, lower, below, aside);
  const Point ahead = bending(view, side, lower, below, aside);
  const Point shank = cosine(flexed) * down - sine(flexed) * ahead;
  const Point shin = cosine(flexed) * ahead + sine(flexed) * down;  // where the shin faces
  limb.knee = limb.hip + s::kThigh * hanging(view, side, lower, turn, aside);
  limb.ankle = limb.knee + s::kShank * shank;

  const double ankle = a.at(LimbAngle::kAnkle, side);
  Point along = cosine(ankle) * shin - sine(ankle) * shank;
  Point sole = cosine(ankle) * shank + sine(ankle) * shin;
  if (view == View::kFront) {
    const double out = side == kLeft ? 1.0 : -1.0;
    const double turned_out = a.at(LimbAngle::kFoot, side);
    const Point sideways = {out * cosine(lower.in_plane), -out * sine(lower.in_plane), 0};
    along = cosine(turned_out) * along + sine(turned_out) * sideways;
  }
  if (rule == FootRule::kFlat) {
    sole = {0, -1, 0};
    const double level = std::sqrt(along.x * along.x + along.z * along.z);
    along = level > 0.01 ? (1 / level) * Point{along.x, 0, along.z} : Point{1, 0, 0};
  }
  limb.heel = limb.ankle + s::kAnkleHeight * sole - s::kHeelBehind * along;
  limb.ball = limb.ankle + s::kAnkleHeight * sole + s::kBallAhead * along;
  Point toes = along;
  if (rule == FootRule::kOnBall) {
    // Toes give way towards the shin, unless the foot is stretched out behind.
    toes = view == View::kSide ? Point{along.x < -0.6 ? -1.0 : 1.0, 0, 0} : Point{toes.x, 0, toes.z};
  }
  limb.toe = limb.ball + s::kToes * toes;
}

// A circle of flesh that can touch the ground.
struct Pad {
  Point centre;
  double radius;
};

// At most two pads carry a contact.
struct Pads {
  std::array<Pad, 2> pads;
  int count;
};

Pads pads_of(const Body& body, const Contact& contact) {
  const Limbs& limb = body.limbs[static_cast<std::size_t>(contact.side)];
  switch (contact.part) {
    case ContactPart::kFoot: {
      // A foot lying on its edge touches with the ankle's side.
      const bool edge = std::fabs(limb.ankle.x - limb.knee.x) > 2 * std::fabs(limb.ankle.y - limb.knee.y) &&
                        std::fabs(limb.heel.y - limb.ankle.y) < 0.5 * s::kAnkleHeight;
      if (edge) return {{Pad{limb.ankle, s::kAnkleRadius}, {}}, 1};
      return {{Pad{limb.heel, 0}, {limb.ball, 0}}, 2};
    }
    case ContactPart::kToes:
      return {{Pad{limb.ball, 0}, {}}, 1};
    case ContactPart::kHeel:
      return {{Pad{limb.heel, 0}, {}}, 1};
    case ContactPart::kKnee:
      return {{Pad{limb.knee, s::kKneeRadius}, {}}, 1};
    case ContactPart::kHand:
      return {{Pad{limb.hand, s::kHandRadius}, {}}, 1};
    case ContactPart::kForearm:
      return {{Pad{limb.elbow, s::kElbowRadius}, {limb.wrist, s::kWristRadius}}, 2};
    case ContactPart::kElbow:
      return {{Pad{limb.elbow, s::kElbowRadius}, {}}, 1};
    case ContactPart::kShoulder:
      return {{Pad{limb.shoulder, s::kShoulderRadius}, {}}, 1};
    case ContactPart::kHip:
      return {{Pad{limb.hip, s::kHipBreadth / 2 - s::kHipJoint}, {}}, 1};
    case ContactPart::kSeat:
      return {{Pad{body.pelvis, s::kSeatRadius}, {}}, 1};
    case ContactPart::kBack:
    case ContactPart::kChest:
      return {{Pad{between(body.chest, body.neck, 0.4), s::kChestRadius}, {}}, 1};
    case ContactPart::kHead:
      return {{Pad{body.head, s::kHeadRadius}, {}}, 1};
  }
  return {};
}

void for_each_point(Body& body, Point (*change)(Point, double, double), double a, double b) {
  for (Point* p : {&body.pelvis, &body.waist, &body.chest, &body.neck, &body.head}) *p = change(*p, a, b);
  for (Limbs& l : body.limbs) {
    for (Point* p : {&l.shoulder, &l.elbow, &l.wrist, &l.hand, &l.fingertip, &l.hip, &l.knee, &l.ankle, &l.heel,
                     &l.ball, &l.toe}) {
      *p = change(*p, a, b);
    }
  }
}

}  // namespace

Body body_of(View view, const Angles& a, const std::array<FootRule, 2>& feet) {
  Body body;
  const Frame lower = {a[MiddleAngle::kTrunk], a[MiddleAngle::kTrunkAside]};
  const Frame upper = {lower.in_plane + a[MiddleAngle::kSpine], lower.aside};
  const Frame above = {upper.in_plane + a[MiddleAngle::kNeck], upper.aside};
  body.waist = s::kLowerTrunk * rising(view, lower);
  body.chest = body.waist + (s::kChestAlong * s::kUpperTrunk) * rising(view, upper);
  body.neck = body.waist + s::kUpperTrunk * rising(view, upper);
  body.head = body.neck + s::kHeadCentre * rising(view, above);
  for (int side = 0; side < 2; ++side) {
    Limbs& limb = body.limbs[static_cast<std::size_t>(side)];
    limb.shoulder = body.neck + s::kShoulderJoint * across(view, side, upper, a[MiddleAngle::kTurn]);
    limb.hip = s::kHipJoint * across(view, side, lower, 0);
    place_arm(view, side, upper, a, limb);
    place_leg(view, side, lower, a, feet[static_cast<std::size_t>(side)], limb);
  }
  return body;
}

Body moved(const Body& body, double right, double up) {
  Body out = body;
  for_each_point(
      out,
      [](Point p, double dx, double dy) {
        return Point{p.x + dx, p.y + dy, p.z};
      },
      right, up);
  return out;
}

Body mirrored(const Body& body, double about_x) {
  Body out = body;
  for_each_point(
      out,
      [](Point p, double x, double) {
        return Point{2 * x - p.x, p.y, p.z};
      },
      about_x, 0);
  return out;
}

Body scaled(const Body& body, double size, double about_x) {
  Body out = body;
  for_each_point(
      out,
      [](Point p, double k, double x) {
        return Point{x + k * (p.x - x), k * p.y, k * p.z};
      },
      size, about_x);
  return out;
}

Point point_of(const Body& body, const JointName& name) {
  if (has_side(name.joint) && name.side == kBothSides) {
    return between(point_of(body, {name.joint, 0, false}), point_of(body, {name.joint, 1, false}), 0.5);
  }
  const Limbs& limb = body.limbs[static_cast<std::size_t>(name.side == 1)];
  switch (name.joint) {
    case Joint::kHead:
      return body.head;
    case Joint::kNeck:
      return body.neck;
    case Joint::kChest:
      return body.chest;
    case Joint::kPelvis:
      return body.pelvis;
    case Joint::kShoulder:
      return limb.shoulder;
    case Joint::kElbow:
      return limb.elbow;
    case Joint::kWrist:
      return limb.wrist;
    case Joint::kHand:
      return limb.hand;
    case Joint::kHip:
      return limb.hip;
    case Joint::kKnee:
      return limb.knee;
    case Joint::kAnkle:
      return limb.ankle;
    case Joint::kFoot:
      return between(limb.heel, limb.ball, 0.6);
    case Joint::kToes:
      return limb.toe;
    case Joint::kHeel:
      return limb.heel;
  }
  return {};
}

double lowest(const Body& body, const Contact& contact) {
  const Pads found = pads_of(body, contact);
  double low = found.pads[0].centre.y - found.pads[0].radius;
  for (int i = 1; i < found.count; ++i) {
    const Pad& pad = found.pads[static_cast<std::size_t>(i)];
    low = std::min(low, pad.centre.y - pad.radius);
  }
  return low;
}

double lowest(const Body& body) {
  double low = lowest(body, {ContactPart::kSeat, 0});
  for (const ContactPart part : {ContactPart::kChest, ContactPart::kHead}) low = std::min(low, lowest(body, {part, 0}));
  for (int side = 0; side < 2; ++side) {
    for (const ContactPart part :
         {ContactPart::kFoot, ContactPart::kKnee, ContactPart::kHand, ContactPart::kElbow, ContactPart::kShoulder}) {
      low = std::min(low, lowest(body, {part, side}));
    }
    low = std::min(low, body.limbs[static_cast<std::size_t>(side)].toe.y);
  }
  return low;
}

double ground_place(const Body& body, const Contact& contact) {
  const Pads found = pads_of(body, contact);
  double sum = 0;
  for (int i = 0; i < found.count; ++i) sum += found.pads[static_cast<std::size_t>(i)].centre.x;
  return sum / found.count;
}

}  // namespace lanework::figure
