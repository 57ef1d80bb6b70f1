// Draws a figure with Cairo: an ink mannequin on its ground line, with what is in its hands and around it.
// Near limbs are full ink, far limbs are light with an ink edge, so that black-and-white print loses nothing.
#pragma once

#include <cairo.h>

#include "app/draw/page.h"
#include "app/draw/tokens.h"
#include "core/figure/figure.h"

namespace lanework::draw {

struct FigureLook {
  Colour paper{1, 1, 1};  // what lies under the picture: thin gaps between limbs are drawn in it
  int pose = -1;          // -1: the figure's main pose
  bool ghost = true;
  bool arrow = true;
  // Unless zero, the scale in points per stature; otherwise the largest that fits, but never larger than a
  // standing figure that fills the box, so that people in neighbouring pictures are of a size.
  double points_per_stature = 0;
};

// Draws inside the box: centred, the ground line near its lower edge. An empty figure draws nothing.
// Leaves the state of the context as it was.
void draw_figure(cairo_t* cr, const Box& box, const figure::Figure& figure, const FigureLook& look = {});

}  // namespace lanework::draw
