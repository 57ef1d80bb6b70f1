// The outline of a mannequin: rounded pieces of flesh around the points of a body, in the body's own frame
// (stature 1, y up). Grouped by limb, in painting order from the back to the front.
#pragma once

#include <vector>

#include "app/draw/figure_hull.h"
#include "core/figure/body.h"

namespace lanework::draw {

using Outline = std::vector<Spot>;  // a polygon

enum class Layer {
  kFar,   // away from the eye: drawn light
  kNear,  // full ink
  kFace   // the head: light, with hair
};

struct LimbShape {
  Layer layer;
  std::vector<Rounded> pieces;  // their union is the shape
  std::size_t gap_from = 0;     // pieces from here on are kept apart from what lies behind by a gap
};

// What is drawn on the face, after the head's shape.
struct FaceMarks {
  Outline hair;               // to be clipped to the head
  std::vector<Rounded> eyes;  // filled; closed eyes are thin
};

struct Mannequin {
  std::vector<LimbShape> shapes;  // back to front
  std::size_t head = 0;           // position of the head's shape
  FaceMarks face;
};

struct Look {
  bool seen_from_behind = false;  // front view only
  bool eyes_closed = false;
  bool faces_left = false;  // side view only
};

Mannequin mannequin_of(figure::View view, const figure::Body& body, const Look& look);

}  // namespace lanework::draw
