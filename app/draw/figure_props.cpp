#include "app/draw/figure_props.h"

#include <algorithm>
#include <cmath>

#include "core/figure/trigonometry.h"

namespace lanework::draw {
namespace {

using figure::JointName;
using figure::Point;
using figure::Prop;
using figure::PropKind;
using figure::Scene;

// Sizes as fractions of the stature of a child of about 1.5 m (own judgement).
constexpr double kBall = 0.072;  // half of a size-4 ball's 21 cm
constexpr double kConeHeight = 0.13;
constexpr double kConeHalf = 0.055;
constexpr double kWallHeight = 1.08;
constexpr double kWallThick = 0.035;
constexpr double kMatThick = 0.018;
constexpr double kBenchHalf = 0.16;
constexpr double kBenchThick = 0.035;

Spot named(const Scene& scene, const JointName& name) {
  const bool partner = name.of_other && scene.partner.has_value();
  const Point p = figure::point_of(partner ? scene.partner->body : scene.figure.body, name);
  return {p.x, p.y};
}

Outline box(double left, double bottom, double right, double top) {
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

// A ball rests against the joint, on the far side of the limb from the body, or between two joints.
void add_ball(const Prop& prop, const Scene& scene, std::vector<PropShape>& out) {
  Spot centre = {prop.forward, kBall};
  if (prop.at) {
    centre = named(scene, *prop.at);
    const bool hand = prop.at->joint == figure::Joint::kHand;
    const bool foot = prop.at->joint == figure::Joint::kFoot || prop.at->joint == figure::Joint::kToes;
    if (prop.at->side != figure::kBothSides && hand) {
      JointName wrist = *prop.at;
      wrist.joint = figure::Joint::kWrist;
      const Spot from = named(scene, wrist);
      const double dx = centre.x - from.x;
      const double dy = centre.y - from.y;
      const double l = std::max(1e-6, std::sqrt(dx * dx + dy * dy));
      centre = {centre.x + dx / l * kBall, centre.y + dy / l * kBall};
    } else if (foot) {
      centre = {centre.x + kBall + 0.035, centre.y + kBall - 0.005};
    }
    centre.y = std::max(centre.y, kBall);
  }
  out.push_back({PropInk::kOutline, {}, true, hull_of({{centre, kBall}})});
  // A patch and its seams, so that it is not taken for a head.
  Outline patch;
  for (int a = 90; a < 450; a += 72) {
    const Spot way = {figure::cosine(a), figure::sine(a)};
    patch.push_back({centre.x + 0.42 * kBall * way.x, centre.y + 0.42 * kBall * way.y});
    out.push_back(
        {PropInk::kThin, {patch.back(), {centre.x + 0.95 * kBall * way.x, centre.y + 0.95 * kBall * way.y}}, true, {}});
  }
  out.push_back({PropInk::kSolid, patch, true, {}});
}

void add_wall(const Prop& prop, const Scene& scene, std::vector<PropShape>& out) {
  double x = prop.forward;
  double way = prop.forward < 0 ? -1 : 1;
  if (prop.at) {
    const Spot at = named(scene, *prop.at);
    way = at.x >= scene.figure.body.pelvis.x ? 1 : -1;
    x = at.x + way * 0.022;
  }
  // The face of the wall and strokes behind it, as on a builder's drawing.
  const double far_x = x + way * kWallThick;
  for (double y = 0.05; y < kWallHeight; y += 0.07) {
    out.push_back({PropInk::kThin, {{x, y}, {far_x, y - kWallThick}}, false, {}});
  }
  out.push_back({PropInk::kLine, {{x, 0}, {x, kWallHeight}}, false, {}});
}

void add_bench(const Prop& prop, const Scene& scene, std::vector<PropShape>& out) {
  double x = prop.forward;
  double top = prop.height;
  if (prop.at) {
    const Spot at = named(scene, *prop.at);
    x = at.x;
    top = std::max(0.06, at.y - 0.028);
  }
  out.push_back({PropInk::kLight, box(x - kBenchHalf, top - kBenchThick, x + kBenchHalf, top), false, {}});
  for (const double leg : {x - kBenchHalf + 0.03, x + kBenchHalf - 0.03}) {
    out.push_back({PropInk::kLine, {{leg, 0}, {leg, top - kBenchThick}}, false, {}});
  }
}

// Ink with a band of paper, on a flat foot.
void add_cone(double x, std::vector<PropShape>& out) {
  const auto half = [](double y) { return 0.010 + (kConeHalf - 0.020) * (1 - y / kConeHeight); };
  const auto slice = [&](double low, double high) {
    out.push_back({PropInk::kSolid,
                   {{x - half(low), low}, {x + half(low), low}, {x + half(high), high}, {x - half(high), high}},
                   true,
                   {}});
  };
  slice(0.012, 0.052);
  slice(0.078, kConeHeight);
  out.push_back({PropInk::kLine, {{x - kConeHalf, 0.008}, {x + kConeHalf, 0.008}}, true, {}});
}

}  // namespace

std::vector<PropShape> shapes_of(const Prop& prop, const Scene& scene, double least_x, double most_x) {
  std::vector<PropShape> out;
  switch (prop.kind) {
    case PropKind::kBall:
      add_ball(prop, scene, out);
      break;
    case PropKind::kWall:
      add_wall(prop, scene, out);
      break;
    case PropKind::kCone:
      add_cone(prop.at ? named(scene, *prop.at).x : prop.forward, out);
      break;
    case PropKind::kLine: {
      // A strip of paint that runs towards the eye.
      const double x = prop.at ? named(scene, *prop.at).x : prop.forward;
      out.push_back(
          {PropInk::kOutline, {{x - 0.014, 0}, {x + 0.014, 0}, {x + 0.030, -0.06}, {x - 0.030, -0.06}}, false, {}});
      break;
    }
    case PropKind::kMat:
      out.push_back({PropInk::kLight, box(least_x - 0.04, -kMatThick, most_x + 0.04, 0), false, {}});
      break;
    case PropKind::kBench:
      add_bench(prop, scene, out);
      break;
    case PropKind::kBand:
      if (prop.at && prop.to)
        out.push_back({PropInk::kLine, {named(scene, *prop.at), named(scene, *prop.to)}, true, {}});
      break;
  }
  return out;
}

namespace {

Spot unit_of(figure::Direction direction) {
  constexpr double kDiagonal = 0.70710678118654752;
  switch (direction) {
    case figure::Direction::kUp:
      return {0, 1};
    case figure::Direction::kDown:
      return {0, -1};
    case figure::Direction::kForward:
    case figure::Direction::kToRight:
      return {1, 0};
    case figure::Direction::kBack:
    case figure::Direction::kToLeft:
      return {-1, 0};
    case figure::Direction::kForwardUp:
      return {kDiagonal, kDiagonal};
    case figure::Direction::kForwardDown:
      return {kDiagonal, -kDiagonal};
    case figure::Direction::kBackUp:
      return {-kDiagonal, kDiagonal};
    case figure::Direction::kBackDown:
      return {-kDiagonal, -kDiagonal};
  }
  return {0, 1};
}

}  // namespace

ArrowShape arrow_of(const figure::Arrow& arrow, const Scene& scene, const Scene* from, const Scene* to) {
  Spot start = named(scene, arrow.from);
  Spot way = unit_of(arrow.direction);
  double length = arrow.length;
  if (from != nullptr && to != nullptr) {
    start = named(*from, arrow.from);
    const Spot end = named(*to, arrow.from);
    const double dx = end.x - start.x;
    const double dy = end.y - start.y;
    length = std::max(0.08, std::sqrt(dx * dx + dy * dy));
    way = {dx / length, dy / length};
  }
  const Spot left = {-way.y, way.x};
  // Clear of the body: vertical arrows stand beside it, the others set off beyond the joint.
  if (std::fabs(way.y) > 0.9 && !to) {
    start.x += (arrow.gap + 0.06) * (arrow.from.side == 1 ? -1 : 1);
  } else if (!to) {
    start = {start.x + way.x * (arrow.gap + 0.05), start.y + way.y * (arrow.gap + 0.05)};
  }
  ArrowShape out;
  const double bulge = length * figure::sine(arrow.bend) / 2;
  constexpr int kPieces = 16;
  for (int i = 0; i <= kPieces; ++i) {
    const double t = static_cast<double>(i) / kPieces;
    const double off = 4 * bulge * t * (1 - t);
    out.shaft.push_back({start.x + way.x * length * t + left.x * off, start.y + way.y * length * t + left.y * off});
  }
  const Spot tip = out.shaft.back();
  const Spot before = out.shaft[kPieces - 3];
  const double l = std::max(1e-6, std::hypot(tip.x - before.x, tip.y - before.y));
  const Spot ahead = {(tip.x - before.x) / l, (tip.y - before.y) / l};
  const Spot side = {-ahead.y, ahead.x};
  const double size = std::min(0.055, 0.35 * length);
  out.head = {{tip.x + ahead.x * size * 0.4, tip.y + ahead.y * size * 0.4},
              {tip.x - ahead.x * size + side.x * size * 0.62, tip.y - ahead.y * size + side.y * size * 0.62},
              {tip.x - ahead.x * size * 0.6, tip.y - ahead.y * size * 0.6},
              {tip.x - ahead.x * size - side.x * size * 0.62, tip.y - ahead.y * size - side.y * size * 0.62}};
  out.shaft.pop_back();
  return out;
}

}  // namespace lanework::draw
