// The place drawn to scale from above: cones, lines, where to wait, where to spread out, with distances.
#pragma once

#include <string>
#include <vector>

#include "app/draw/card.h"
#include "app/draw/pen.h"

namespace lanework::draw {

struct StripGeometry {
  double points_a_metre = 0;
  bool area_around_lanes = false;           // the lanes fit in the area and are drawn inside it
  std::vector<std::vector<Point>> cones;    // by lane, from the start outwards
  std::vector<std::vector<Point>> waiting;  // by lane: players at the start, first in line first
  Box lanes;                                // from the first cone to the end of the lane, all lanes
  Box area;                                 // what is seen of it; of zero size where none is drawn
  bool area_cut = false;
};

// The largest scale that fits waiting players and lanes, running to the right, and the area's length; one point
// a side is left free. An area wider than the box is cut at the box: its long sides are then not drawn.
StripGeometry strip_geometry(const StripMatter& strip, const Box& box);

// Draws the plan into the box: the ground above, the length of the lane below.
StripGeometry draw_strip(const StripMatter& strip, const Box& box, const Pen& pen);

// What to lay out, in words: a bold lead and the rest, one a line.
struct StripLine {
  std::string lead;
  std::string text;
};
std::vector<StripLine> strip_lines(const StripMatter& strip);

}  // namespace lanework::draw
