// Things in the picture of a figure, as simple shapes in the figure's frame (stature 1, y up, ground at 0).
#pragma once

#include <vector>

#include "app/draw/figure_outline.h"
#include "core/figure/prop_shapes.h"

namespace lanework::draw {

using figure::PropInk;

struct PropShape {
  PropInk ink;
  Outline outline;
  bool before_figure = false;  // drawn after the mannequin
  Rounded round;               // instead of an outline
};

// An open line that ends in an arrow head.
struct ArrowShape {
  Outline shaft;
  Outline head;
};

std::vector<PropShape> shapes_of(const figure::Prop& prop, const figure::Scene& scene, double least_x, double most_x);

// The arrow of a figure for its main pose; 'ghost' is the scene of the ghost, where there is one.
ArrowShape arrow_of(const figure::Arrow& arrow, const figure::Scene& scene, const figure::Scene* from,
                    const figure::Scene* to);

}  // namespace lanework::draw
