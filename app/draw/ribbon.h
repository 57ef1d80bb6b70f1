// The session as a ribbon drawn to time: as many points a second from end to end.
#pragma once

#include <vector>

#include "app/draw/card.h"
#include "app/draw/pen.h"

namespace lanework::draw {

// One drill on the ribbon, in x: the break and the change before it, the telling, the doing.
struct RibbonPart {
  double rest_from = 0;
  double change_from = 0;
  double telling_from = 0;
  double doing_from = 0;
  double until = 0;
};

struct RibbonGeometry {
  Box bar;
  double points_a_second = 0;
  std::vector<RibbonPart> parts;  // one a drill
  double gathered = 0;            // x where gathering ends
  double finish = 0;              // x of the planned finish
  double nine_in_ten = 0;         // x by which nine nights in ten are done
  double slot_end = 0;            // x where the slot ends
};

// Start at the bar's left edge; the latest of slot end, nine-in-ten and the drills at its right edge.
RibbonGeometry ribbon_geometry(const CardMatter& matter, const Box& bar);

// Height of the whole ribbon with phase names above and the time axis below.
double ribbon_height(const Pen& pen);
// Draws the ribbon into the box; returns the geometry it used.
RibbonGeometry draw_ribbon(const CardMatter& matter, const Box& box, const Pen& pen);

// The sign of a formation, filling the box: a bar with an arrow, a dot field, two linked dots.
void draw_formation(Formation formation, const Box& box, const Pen& pen);

}  // namespace lanework::draw
