// Rounded pieces: the convex hull of circles, kept as arcs joined by straight lines. Growing every arc by the
// same amount gives the outline at that distance, so that edges and gaps need no strokes.
#pragma once

#include <vector>

namespace lanework::draw {

struct Spot {
  double x = 0;
  double y = 0;
};

struct Circle {
  Spot centre;
  double radius = 0;
};

// Anticlockwise from one angle to the other, degrees, from <= to <= from + 360.
struct Arc {
  Spot centre;
  double radius = 0;
  double from = 0;
  double to = 0;
};

using Rounded = std::vector<Arc>;  // closed, convex, anticlockwise

// Exact for one and two circles; for more, tangents are found to a few degrees, which is a thousandth of a radius.
// REQUIRES: at least one circle.
Rounded hull_of(const std::vector<Circle>& circles);

}  // namespace lanework::draw
