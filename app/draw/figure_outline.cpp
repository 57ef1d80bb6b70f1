#include "app/draw/figure_outline.h"

#include <algorithm>
#include <cmath>

#include "core/figure/skeleton.h"
#include "core/figure/trigonometry.h"

namespace lanework::draw {
namespace {

using figure::Body;
using figure::Limbs;
using figure::Point;
using figure::View;

// Half thicknesses of the drawn flesh, fractions of stature (own judgement: slim, a little young).
constexpr double kThighTop = 0.056;
constexpr double kThighMiddle = 0.049;
constexpr double kKnee = 0.0335;
constexpr double kCalf = 0.037;
constexpr double kAnkle = 0.021;
constexpr double kArmTop = 0.034;
constexpr double kElbow = 0.024;
constexpr double kForearmThick = 0.026;
constexpr double kWrist = 0.017;
constexpr double kPalmThick = 0.020;
constexpr double kFinger = 0.010;
constexpr double kHeel = 0.017;
constexpr double kBall = 0.015;
constexpr double kToe = 0.011;
constexpr double kHead = 1.10;  // heads are drawn a tenth larger than an adult's

Spot spot(Point p) { return {p.x, p.y}; }
Spot plus(Spot a, double k, Spot b) { return {a.x + k * b.x, a.y + k * b.y}; }
Spot mix(Spot a, Spot b, double t) { return {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)}; }
Spot minus(Spot a, Spot b) { return {a.x - b.x, a.y - b.y}; }
double length(Spot a) { return std::sqrt(a.x * a.x + a.y * a.y); }
Spot unit(Spot a) {
  const double l = length(a);
  return l > 1e-9 ? Spot{a.x / l, a.y / l} : Spot{0, 1};
}
// A quarter turn clockwise: 'ahead' of a segment that points up, for a figure that faces right.
Spot clockwise(Spot a) { return {a.y, -a.x}; }

std::vector<Rounded> upper_arm(const Limbs& l) {
  return {hull_of({{spot(l.shoulder), kArmTop}, {spot(l.elbow), kElbow}})};
}

std::vector<Rounded> forearm(const Limbs& l) {
  const Spot elbow = spot(l.elbow);
  const Spot wrist = spot(l.wrist);
  const Spot full = mix(elbow, wrist, 0.28);
  const Spot tip = mix(wrist, spot(l.fingertip), 0.86);
  return {hull_of({{elbow, kElbow}, {full, kForearmThick}}), hull_of({{full, kForearmThick}, {wrist, kWrist}}),
          hull_of({{wrist, kWrist}, {spot(l.hand), kPalmThick}}),
          hull_of({{spot(l.hand), kPalmThick}, {tip, kFinger}})};
}

std::vector<Rounded> thigh(const Limbs& l) {
  const Spot hip = spot(l.hip);
  const Spot knee = spot(l.knee);
  const Spot middle = mix(hip, knee, 0.45);
  return {hull_of({{hip, kThighTop}, {middle, kThighMiddle}}), hull_of({{middle, kThighMiddle}, {knee, kKnee}})};
}

// 'behind' is where the calf bulges: a unit vector, or zero in the front view.
std::vector<Rounded> shank(const Limbs& l, double bulge) {
  const Spot knee = spot(l.knee);
  const Spot ankle = spot(l.ankle);
  const Spot behind = clockwise(unit(minus(ankle, knee)));
  const Spot calf = plus(mix(knee, ankle, 0.32), bulge, behind);
  return {hull_of({{knee, kKnee}, {calf, kCalf}}), hull_of({{calf, kCalf}, {ankle, kAnkle}})};
}

// The sole runs through heel, ball and toe; circles are set inside it.
std::vector<Rounded> foot_from_the_side(const Limbs& l) {
  const Spot heel = spot(l.heel);
  const Spot ball = spot(l.ball);
  const Spot toe = spot(l.toe);
  const Spot along = unit(minus(ball, heel));
  const Spot left = {-along.y, along.x};
  const Spot to_ankle = minus(spot(l.ankle), heel);
  // Which hand of the sole the ankle is on; the toes have theirs on the same.
  const double hand = left.x * to_ankle.x + left.y * to_ankle.y < 0 ? -1 : 1;
  const Spot up = {hand * left.x, hand * left.y};
  const Spot toe_along = unit(minus(toe, ball));
  const Spot toe_up = {-hand * toe_along.y, hand * toe_along.x};
  // The ball's circle touches both the sole and, where the toes bend, the ground under them.
  const Spot between_soles = unit({up.x + toe_up.x, up.y + toe_up.y});
  const double reach = kBall / std::max(0.4, between_soles.x * up.x + between_soles.y * up.y);
  const Circle heel_pad = {plus(heel, kHeel, plus(up, 0.25, along)), kHeel};
  const Circle ball_pad = {plus(ball, reach, between_soles), kBall};
  const Circle toe_pad = {plus(toe, kToe, plus(toe_up, -1, toe_along)), kToe};
  return {hull_of({{spot(l.ankle), kAnkle}, heel_pad, ball_pad}), hull_of({ball_pad, toe_pad})};
}

// Seen from the front a foot is short: its drawn length is what the turn leaves of it.
std::vector<Rounded> foot_from_the_front(const Limbs& l) {
  const Spot ankle = spot(l.ankle);
  const Spot heel = spot(l.heel);
  const Spot ball = spot(l.ball);
  const Spot toe = mix(ball, spot(l.toe), 0.6);
  Spot down = unit(minus(mix(heel, ball, 0.5), ankle));
  if (length(minus(mix(heel, ball, 0.5), ankle)) < 0.01) down = unit(minus(ankle, spot(l.knee)));
  const Spot side = {-down.y, down.x};
  constexpr double kHalf = 0.033;
  constexpr double kRound = 0.014;
  std::vector<Circle> circles = {{ankle, kAnkle}};
  for (const Spot end : {mix(heel, ball, 0.4), toe}) {
    const Spot at = plus(end, -kRound, down);
    circles.push_back({plus(at, kHalf - kRound, side), kRound});
    circles.push_back({plus(at, -(kHalf - kRound), side), kRound});
  }
  return {hull_of(circles)};
}

std::vector<Rounded> trunk_from_the_side(const Body& body) {
  const Spot pelvis = spot(body.pelvis);
  const Spot waist = spot(body.waist);
  const Spot neck = spot(body.neck);
  const Spot low_up = unit(minus(waist, pelvis));
  const Spot high_up = unit(minus(neck, waist));
  const Circle seat = {plus(pelvis, -0.006, clockwise(low_up)), 0.061};
  const Circle belt = {plus(pelvis, 0.05, low_up), 0.053};
  const Circle middle = {waist, 0.050};
  const Circle chest = {plus(mix(waist, neck, 0.62), 0.004, clockwise(high_up)), 0.061};
  const Circle top = {mix(waist, neck, 0.95), 0.043};
  // A turned chest shows both shoulders.
  const Circle near = {spot(body.limbs[figure::kNear].shoulder), 0.034};
  const Circle far = {spot(body.limbs[figure::kFar].shoulder), 0.034};
  return {hull_of({seat, belt}), hull_of({belt, middle}), hull_of({middle, chest}), hull_of({chest, top}),
          hull_of({top, near, far})};
}

std::vector<Rounded> trunk_from_the_front(const Body& body) {
  const Spot waist = spot(body.waist);
  const Spot hip_left = spot(body.limbs[0].hip);
  const Spot hip_right = spot(body.limbs[1].hip);
  const Spot across_hip = unit(minus(hip_left, hip_right));
  const Spot left = spot(body.limbs[0].shoulder);
  const Spot right = spot(body.limbs[1].shoulder);
  const Spot across = unit(minus(left, right));
  const Circle waist_left = {plus(waist, 0.036, across_hip), 0.040};
  const Circle waist_right = {plus(waist, -0.036, across_hip), 0.040};
  const Circle shoulder_left = {plus(left, -0.010, across), 0.034};
  const Circle shoulder_right = {plus(right, 0.010, across), 0.034};
  const Circle neck = {plus(spot(body.neck), 0.012, unit(minus(spot(body.neck), waist))), 0.034};
  return {hull_of({{hip_left, 0.052}, {hip_right, 0.052}, waist_left, waist_right}),
          hull_of({waist_left, waist_right, shoulder_left, shoulder_right}),
          hull_of({shoulder_left, shoulder_right, neck})};
}

struct HeadFrame {
  Spot centre;
  Spot up;
  Spot ahead;  // side view: towards the nose; front view: towards the figure's left
  [[nodiscard]] Spot at(double forward, double upward) const {
    return plus(plus(centre, kHead * forward, ahead), kHead * upward, up);
  }
  [[nodiscard]] Circle circle(double forward, double upward, double radius) const {
    return {at(forward, upward), kHead * radius};
  }
};

std::vector<Rounded> neck_of(const Body& body) {
  return {hull_of({{spot(body.neck), 0.030}, {mix(spot(body.neck), spot(body.head), 0.6), 0.025}})};
}

void head_from_the_side(const HeadFrame& h, const Look& look, LimbShape& shape, FaceMarks& face) {
  shape.pieces = {
      hull_of({h.circle(-0.006, 0.010, 0.055), h.circle(0.020, -0.034, 0.029)}),
      hull_of({h.circle(0.040, 0.006, 0.012), h.circle(0.058, -0.010, 0.007), h.circle(0.040, -0.018, 0.012)})};
  face.hair = {h.at(0.056, 0.036), h.at(0.020, 0.024), h.at(-0.004, -0.004), h.at(-0.022, -0.040),
               h.at(-0.09, -0.05), h.at(-0.09, 0.09),  h.at(0.06, 0.09)};
  if (look.eyes_closed) {
    face.eyes = {hull_of({h.circle(0.022, 0.000, 0.0032), h.circle(0.038, -0.003, 0.0032)})};
  } else {
    face.eyes = {hull_of({h.circle(0.032, 0.002, 0.0062)})};
  }
}

void head_from_the_front(const HeadFrame& h, const Look& look, LimbShape& shape, FaceMarks& face) {
  shape.pieces = {hull_of({h.circle(0, 0.010, 0.053), h.circle(0, -0.028, 0.036)})};
  if (look.seen_from_behind) {
    face.hair = {h.at(-0.1, -0.032), h.at(0.1, -0.032), h.at(0.1, 0.1), h.at(-0.1, 0.1)};
    return;
  }
  face.hair = {h.at(-0.1, 0.012),  h.at(-0.042, 0.020), h.at(-0.014, 0.036), h.at(0.030, 0.026),
               h.at(0.046, 0.010), h.at(0.1, 0.010),    h.at(0.1, 0.1),      h.at(-0.1, 0.1)};
  for (const double x : {-0.020, 0.020}) {
    if (look.eyes_closed) {
      face.eyes.push_back(hull_of({h.circle(x - 0.009, 0, 0.0034), h.circle(x + 0.009, 0, 0.0034)}));
    } else {
      face.eyes.push_back(hull_of({h.circle(x, 0.001, 0.0064)}));
    }
  }
}

void append(std::vector<Rounded>& to, std::vector<Rounded> from) {
  for (Rounded& o : from) to.push_back(std::move(o));
}

void add_head(View view, const Body& body, const Look& look, Mannequin& out) {
  HeadFrame frame{spot(body.head), unit(minus(spot(body.head), spot(body.neck))), {}};
  frame.ahead = clockwise(frame.up);
  if (look.faces_left) frame.ahead = {-frame.ahead.x, -frame.ahead.y};
  frame.centre = plus(frame.centre, 0.010, frame.up);
  LimbShape head{Layer::kFace, {}, 0};
  if (view == View::kSide) {
    head_from_the_side(frame, look, head, out.face);
  } else {
    head_from_the_front(frame, look, head, out.face);
  }
  out.head = out.shapes.size();
  out.shapes.push_back(std::move(head));
}

LimbShape arm_shape(const Limbs& l, Layer layer) {
  LimbShape shape{layer, upper_arm(l), 0};
  append(shape.pieces, forearm(l));
  return shape;
}

LimbShape leg_shape_from_the_side(const Limbs& l, Layer layer) {
  LimbShape shape{layer, thigh(l), 0};
  append(shape.pieces, shank(l, 0.006));
  append(shape.pieces, foot_from_the_side(l));
  return shape;
}

Mannequin from_the_side(const Body& body, const Look& look) {
  Mannequin out;
  out.shapes.push_back(arm_shape(body.limbs[figure::kFar], Layer::kFar));
  out.shapes.push_back(leg_shape_from_the_side(body.limbs[figure::kFar], Layer::kFar));
  LimbShape trunk{Layer::kNear, trunk_from_the_side(body), 0};
  append(trunk.pieces, neck_of(body));
  out.shapes.push_back(std::move(trunk));
  add_head(View::kSide, body, look, out);
  out.shapes.push_back(leg_shape_from_the_side(body.limbs[figure::kNear], Layer::kNear));
  out.shapes.push_back(arm_shape(body.limbs[figure::kNear], Layer::kNear));
  return out;
}

// A limb, or its lower half, and how far before (+) or behind (-) the trunk it lies.
struct Part {
  LimbShape shape;
  double depth;
};

// Both halves of a limb in one shape where they lie in one layer, so that no gap cuts the joint between;
// the upper half is set apart from the trunk only where it lies well before it.
void add_limb(std::vector<Rounded> upper, double upper_depth, std::vector<Rounded> lower, double lower_depth,
              std::vector<Part>& out) {
  constexpr double kLight = -0.09;  // what lies further back is drawn light
  constexpr double kBefore = 0.07;
  const std::size_t gap = upper_depth > kBefore ? 0 : upper.size();
  const bool one_layer =
      (upper_depth < kLight) == (lower_depth < kLight) && std::fabs(upper_depth - lower_depth) < 0.12;
  const auto layer = [](double depth) { return depth < kLight ? Layer::kFar : Layer::kNear; };
  if (one_layer) {
    append(upper, std::move(lower));
    out.push_back({{layer(upper_depth), std::move(upper), gap}, (upper_depth + lower_depth) / 2});
    return;
  }
  out.push_back({{layer(upper_depth), std::move(upper), gap}, upper_depth});
  out.push_back({{layer(lower_depth), std::move(lower), 0}, lower_depth});
}

Mannequin from_the_front(const Body& body, const Look& look) {
  const double eye = look.seen_from_behind ? -1 : 1;
  std::vector<Part> parts;
  for (const Limbs& l : body.limbs) {
    std::vector<Rounded> lower_leg = shank(l, 0);
    append(lower_leg, foot_from_the_front(l));
    const double hip = eye * (l.hip.z + l.knee.z) / 2;
    add_limb(thigh(l), hip - 0.004, std::move(lower_leg), eye * (l.knee.z + l.ankle.z) / 2 - 0.006, parts);
    const double middle = body.neck.z;
    add_limb(upper_arm(l), eye * ((l.shoulder.z + l.elbow.z) / 2 - middle) + 0.002, forearm(l),
             eye * ((l.elbow.z + l.wrist.z) / 2 - middle) + 0.004, parts);
  }
  std::stable_sort(parts.begin(), parts.end(), [](const Part& a, const Part& b) { return a.depth < b.depth; });
  Mannequin out;
  const auto trunk_and_head = [&] {
    LimbShape trunk{Layer::kNear, trunk_from_the_front(body), 0};
    append(trunk.pieces, neck_of(body));
    out.shapes.push_back(std::move(trunk));
    add_head(View::kFront, body, look, out);
  };
  bool trunk_done = false;
  for (Part& part : parts) {
    if (!trunk_done && part.depth >= -0.03) {
      trunk_and_head();
      trunk_done = true;
    }
    out.shapes.push_back(std::move(part.shape));
  }
  if (!trunk_done) trunk_and_head();
  return out;
}

}  // namespace

Mannequin mannequin_of(View view, const Body& body, const Look& look) {
  return view == View::kSide ? from_the_side(body, look) : from_the_front(body, look);
}

}  // namespace lanework::draw
