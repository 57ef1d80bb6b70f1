#include "app/draw/figure_hull.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/figure/trigonometry.h"

namespace lanework::draw {
namespace {

Spot on(const Arc& arc, double angle) {
  return {arc.centre.x + arc.radius * figure::cosine(angle), arc.centre.y + arc.radius * figure::sine(angle)};
}

// The corners of the outline: ends of arcs, and points between.
std::vector<Spot> points_of(const Rounded& piece) {
  std::vector<Spot> out;
  for (const Arc& arc : piece) {
    for (int i = 0; i <= 24; ++i) out.push_back(on(arc, arc.from + (arc.to - arc.from) * i / 24));
  }
  return out;
}

// Worked by hand: two circles of radius 1, three apart: half circles joined by straight sides.
TEST(FigureHull, TwoEqualCircles) {
  const Rounded piece = hull_of({{{0, 0}, 1}, {{3, 0}, 1}});
  ASSERT_EQ(piece.size(), 2u);
  EXPECT_NEAR(piece[0].from, 90, 1e-9);
  EXPECT_NEAR(piece[0].to, 270, 1e-9);
  EXPECT_NEAR(piece[1].from, -90, 1e-9);
  EXPECT_NEAR(piece[1].to, 90, 1e-9);
}

TEST(FigureHull, ASwallowedCircleLeavesTheOther) {
  const Rounded piece = hull_of({{{0, 0}, 2}, {{0.5, 0}, 1}});
  ASSERT_EQ(piece.size(), 1u);
  EXPECT_EQ(piece[0].radius, 2);
}

double distance_to_side(Spot p, Spot a, Spot b) {
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const double square = dx * dx + dy * dy;
  const double t = square > 0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0, 1.0) : 0;
  return std::hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

// How far a point lies outside an outline; 0 inside, by counting crossings.
double outside_by(Spot p, const std::vector<Spot>& outline) {
  bool inside = false;
  double nearest = 1e9;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot a = outline[i];
    const Spot b = outline[(i + 1) % outline.size()];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
    nearest = std::min(nearest, distance_to_side(p, a, b));
  }
  return inside ? 0 : nearest;
}

// Every circle lies within the outline, and the outline nowhere runs clear of all circles' tangents: its arcs
// are the circles' own.
TEST(FigureHull, HoldsEveryCircle) {
  EXPECT_TRUE(rc::check([] {
    std::vector<Circle> circles;
    const int n = *rc::gen::inRange(1, 6);
    for (int i = 0; i < n; ++i) {
      circles.push_back({{*rc::gen::inRange(-100, 101) / 50.0, *rc::gen::inRange(-100, 101) / 50.0},
                         *rc::gen::inRange(1, 100) / 100.0});
    }
    const Rounded piece = hull_of(circles);
    for (const Arc& arc : piece) {
      RC_ASSERT(arc.from <= arc.to);
      RC_ASSERT(arc.to <= arc.from + 360);
    }
    const std::vector<Spot> outline = points_of(piece);
    for (const Circle& c : circles) {
      for (int angle = 0; angle < 360; angle += 15) {
        // Arcs are tried here as chords, which sag by less than a hundredth of the largest radius.
        RC_ASSERT(outside_by(on({c.centre, c.radius, 0, 0}, angle), outline) < 0.01);
      }
    }
  }));
}

}  // namespace
}  // namespace lanework::draw
