#include "core/figure/prop_shapes.h"

#include <algorithm>
#include <cmath>

#include "core/figure/trigonometry.h"

namespace lanework::figure {
namespace {

// Sizes as fractions of the stature of a child of about 1.5 m (own judgement).
constexpr double kBall = 0.072;  // half of a size-4 ball's 21 cm
constexpr double kConeHeight = 0.13;
constexpr double kConeHalf = 0.055;
constexpr double kWallHeight = 1.08;
constexpr double kWallThick = 0.035;
constexpr double kMatThick = 0.018;
constexpr double kBenchHalf = 0.16;
constexpr double kBenchThick = 0.035;

Point named(const Scene& scene, const JointName& name) {
  const bool partner = name.of_other && scene.partner.has_value();
  const Point p = point_of(partner ? scene.partner->body : scene.figure.body, name);
  return {p.x, p.y, 0};
}

std::vector<Point> box(double left, double bottom, double right, double top) {
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

// A ball rests against the joint, on the far side of the limb from the body, or between two joints.
Point middle_of_ball(const Prop& prop, const Scene& scene) {
  if (!prop.at) return {prop.forward, kBall};
  Point centre = named(scene, *prop.at);
  const bool foot = prop.at->joint == Joint::kFoot || prop.at->joint == Joint::kToes;
  if (prop.at->side != kBothSides && prop.at->joint == Joint::kHand) {
    JointName wrist = *prop.at;
    wrist.joint = Joint::kWrist;
    const Point along = centre - named(scene, wrist);
    const double length = std::max(1e-6, std::sqrt(along.x * along.x + along.y * along.y));
    centre = centre + (kBall / length) * along;
  } else if (foot) {
    centre = centre + Point{kBall + 0.035, kBall - 0.005};
  }
  centre.y = std::max(centre.y, kBall);
  return centre;
}

// A patch and its seams, so that it is not taken for a head.
std::vector<PropShape> ball() {
  std::vector<PropShape> out = {{PropInk::kOutline, {}, kBall}};
  std::vector<Point> patch;
  for (int a = 90; a < 450; a += 72) {
    const Point way = {cosine(a), sine(a)};
    patch.push_back(0.42 * kBall * way);
    out.push_back({PropInk::kThin, {patch.back(), 0.95 * kBall * way}});
  }
  out.push_back({PropInk::kSolid, patch});
  return out;
}

// The face of the wall and strokes behind it, as on a builder's drawing.
std::vector<PropShape> wall(bool leftward) {
  std::vector<PropShape> out;
  const double far_x = leftward ? -kWallThick : kWallThick;
  for (double y = 0.05; y < kWallHeight; y += 0.07) {
    out.push_back({PropInk::kThin, {{0, y}, {far_x, y - kWallThick}}});
  }
  out.push_back({PropInk::kLine, {{0, 0}, {0, kWallHeight}}});
  return out;
}

std::vector<PropShape> bench(double top) {
  std::vector<PropShape> out = {{PropInk::kLight, box(-kBenchHalf, -kBenchThick, kBenchHalf, 0)}};
  for (const double leg : {-kBenchHalf + 0.03, kBenchHalf - 0.03}) {
    out.push_back({PropInk::kLine, {{leg, -top}, {leg, -kBenchThick}}});
  }
  return out;
}

// Ink with a band of paper, on a flat foot.
std::vector<PropShape> cone() {
  const auto half = [](double y) { return 0.010 + (kConeHalf - 0.020) * (1 - y / kConeHeight); };
  const auto slice = [&](double low, double high) -> PropShape {
    return {PropInk::kSolid, {{-half(low), low}, {half(low), low}, {half(high), high}, {-half(high), high}}};
  };
  return {slice(0.012, 0.052), slice(0.078, kConeHeight), {PropInk::kLine, {{-kConeHalf, 0.008}, {kConeHalf, 0.008}}}};
}

}  // namespace

PlacedProp placed(const Prop& prop, const Scene& scene) {
  PlacedProp out{prop.kind, {prop.at ? named(scene, *prop.at).x : prop.forward, 0}, {}};
  switch (prop.kind) {
    case PropKind::kBall:
      out.at = middle_of_ball(prop, scene);
      break;
    case PropKind::kWall:
      out.leftward = prop.at ? out.at.x < scene.figure.body.pelvis.x : prop.forward < 0;
      if (prop.at) out.at.x += out.leftward ? -0.022 : 0.022;
      break;
    case PropKind::kBench:
      out.at.y = prop.at ? std::max(0.06, named(scene, *prop.at).y - 0.028) : prop.height;
      break;
    case PropKind::kBand:
      if (prop.at) out.at = named(scene, *prop.at);
      break;
    case PropKind::kCone:
    case PropKind::kLine:
    case PropKind::kMat:
      break;
  }
  out.to = prop.kind == PropKind::kBand && prop.to ? named(scene, *prop.to) : out.at;
  return out;
}

std::vector<PropShape> shapes_of(const PlacedProp& prop, double least_x, double most_x) {
  switch (prop.kind) {
    case PropKind::kBall:
      return ball();
    case PropKind::kWall:
      return wall(prop.leftward);
    case PropKind::kCone:
      return cone();
    case PropKind::kLine:  // a strip of paint that runs towards the eye
      return {{PropInk::kOutline, {{-0.014, 0}, {0.014, 0}, {0.030, -0.06}, {-0.030, -0.06}}}};
    case PropKind::kMat:
      return {{PropInk::kLight, box(least_x - 0.04, -kMatThick, most_x + 0.04, 0)}};
    case PropKind::kBench:
      return bench(prop.at.y);
    case PropKind::kBand:
      return {{PropInk::kLine, {{}, prop.to - prop.at}}};
  }
  return {};
}

bool before_figure(PropKind kind) {
  return kind == PropKind::kBall || kind == PropKind::kCone || kind == PropKind::kBand;
}

bool goes_along(PropKind kind) { return kind == PropKind::kBall || kind == PropKind::kBand; }

}  // namespace lanework::figure
