// Things in the picture of a figure (a ball, a wall, a cone) as simple shapes in ink, for whoever draws them: the card
// and, moving, the phone and the desk. Lengths are fractions of stature, y up, the ground at 0.
#pragma once

#include <vector>

#include "core/figure/standing.h"

namespace lanework::figure {

// Paper with an ink edge; light with an ink edge; all ink; an open line; a thin open line.
enum class PropInk { kOutline, kLight, kSolid, kLine, kThin };

// Measured from where the thing is.
struct PropShape {
  PropInk ink;
  std::vector<Point> outline;  // a polygon, or an open line
  double radius = 0;           // unless zero, a disc about where the thing is in place of the outline
};

// Where a thing is: a ball's middle, the middle of a bench's top, the foot of a wall's face, a spot on the ground.
struct PlacedProp {
  PropKind kind;
  Point at;
  Point to;               // a band's other end; else as 'at'
  bool leftward = false;  // a wall lies to the left of its face
};

PlacedProp placed(const Prop& prop, const Scene& scene);

// From the back to the front. A mat reaches from least_x to most_x, both as seen from where it is.
std::vector<PropShape> shapes_of(const PlacedProp& prop, double least_x, double most_x);

// Drawn after the figure, which it may hide in part.
bool before_figure(PropKind kind);
// A ball and a band go with the hands that have them; what stands on the ground stays where it is.
bool goes_along(PropKind kind);

}  // namespace lanework::figure
