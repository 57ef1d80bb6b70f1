#include "app/draw/figure_hull.h"

#include <algorithm>
#include <cmath>

#include "core/figure/trigonometry.h"

namespace lanework::draw {
namespace {

constexpr int kStep = 5;  // degrees between the points tried on a circle

struct Sample {
  Spot at;
  std::size_t circle;
  int angle;
};

double cross(Spot o, Spot a, Spot b) { return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x); }

// Anticlockwise, by the monotone chain.
std::vector<Sample> convex(std::vector<Sample> samples) {
  std::sort(samples.begin(), samples.end(), [](const Sample& a, const Sample& b) {
    if (a.at.x != b.at.x) return a.at.x < b.at.x;
    if (a.at.y != b.at.y) return a.at.y < b.at.y;
    return a.circle < b.circle;
  });
  std::vector<Sample> hull;
  for (int half = 0; half < 2; ++half) {
    const std::size_t start = hull.size();
    for (const Sample& s : samples) {
      while (hull.size() >= start + 2 && cross(hull[hull.size() - 2].at, hull.back().at, s.at) <= 0) hull.pop_back();
      hull.push_back(s);
    }
    hull.pop_back();
    std::reverse(samples.begin(), samples.end());
  }
  return hull;
}

const std::vector<Spot>& round_points() {
  static const std::vector<Spot> points = [] {
    std::vector<Spot> out;
    for (int a = 0; a < 360; a += kStep) out.push_back({figure::cosine(a), figure::sine(a)});
    return out;
  }();
  return points;
}

// Two circles: their outer tangents leave both at the same angle from the line of centres.
Rounded capsule(const Circle& a, const Circle& b) {
  const double dx = b.centre.x - a.centre.x;
  const double dy = b.centre.y - a.centre.y;
  const double distance = std::sqrt(dx * dx + dy * dy);
  if (distance <= std::fabs(a.radius - b.radius)) {
    const Circle& outer = a.radius >= b.radius ? a : b;
    return {{outer.centre, outer.radius, 0, 360}};
  }
  const double way = figure::direction_of(dy, dx);
  const double tangent = figure::arc_cosine((a.radius - b.radius) / distance);
  return {{a.centre, a.radius, way + tangent, way + 360 - tangent}, {b.centre, b.radius, way - tangent, way + tangent}};
}

}  // namespace

Rounded hull_of(const std::vector<Circle>& circles) {
  if (circles.size() == 2) return capsule(circles[0], circles[1]);
  std::vector<Sample> samples;
  for (std::size_t c = 0; c < circles.size(); ++c) {
    int angle = 0;
    for (const Spot p : round_points()) {
      const Circle& circle = circles[c];
      samples.push_back({{circle.centre.x + circle.radius * p.x, circle.centre.y + circle.radius * p.y}, c, angle});
      angle += kStep;
    }
  }
  const std::vector<Sample> hull = convex(std::move(samples));
  // Start where the circle changes, so that no arc is cut in two.
  std::size_t start = hull.size();
  for (std::size_t i = 0; i < hull.size() && start == hull.size(); ++i) {
    if (hull[i].circle != hull[(i + hull.size() - 1) % hull.size()].circle) start = i;
  }
  if (start == hull.size()) {
    const Circle& only = circles[hull.front().circle];
    return {{only.centre, only.radius, 0, 360}};
  }
  Rounded out;
  for (std::size_t k = 0; k < hull.size(); ++k) {
    const Sample& s = hull[(start + k) % hull.size()];
    const bool same = k > 0 && s.circle == hull[(start + k - 1) % hull.size()].circle;
    if (!same) {
      out.push_back({circles[s.circle].centre, circles[s.circle].radius, static_cast<double>(s.angle),
                     static_cast<double>(s.angle)});
      continue;
    }
    double to = s.angle;
    while (to < out.back().from) to += 360;
    out.back().to = to;
  }
  return out;
}

}  // namespace lanework::draw
