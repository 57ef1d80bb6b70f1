#include "app/draw/figure_props.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/figure/prop_shapes.h"
#include "core/figure/trigonometry.h"

namespace lanework::draw {

std::vector<PropShape> shapes_of(const figure::Prop& prop, const figure::Scene& scene, double least_x, double most_x) {
  const figure::PlacedProp thing = figure::placed(prop, scene);
  std::vector<PropShape> out;
  for (const figure::PropShape& shape : figure::shapes_of(thing, least_x - thing.at.x, most_x - thing.at.x)) {
    PropShape one{shape.ink, {}, figure::before_figure(prop.kind), {}};
    if (shape.radius > 0) one.round = hull_of({{{thing.at.x, thing.at.y}, shape.radius}});
    for (const figure::Point p : shape.outline) one.outline.push_back({thing.at.x + p.x, thing.at.y + p.y});
    out.push_back(std::move(one));
  }
  return out;
}

namespace {

Spot named(const figure::Scene& scene, const figure::JointName& name) {
  const bool partner = name.of_other && scene.partner.has_value();
  const figure::Point p = figure::point_of(partner ? scene.partner->body : scene.figure.body, name);
  return {p.x, p.y};
}

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

ArrowShape arrow_of(const figure::Arrow& arrow, const figure::Scene& scene, const figure::Scene* from,
                    const figure::Scene* to) {
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
