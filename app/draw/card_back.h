// Side two but for the drills: its title, when to stop a drill, what found no room in front, and the form
// for an emergency, filled in by hand.
#pragma once

#include "app/draw/card.h"
#include "app/draw/pen.h"

namespace lanework::draw {

double draw_back_head(const CardMatter& matter, const Box& content, const Pen& pen);
// with_changes: what is different tonight stands here in full. Returns the height used.
double draw_back_lists(const CardMatter& matter, Point at, double width, bool with_changes, const Pen& pen);
double draw_emergency(const CardMatter& matter, Point at, double width, const Pen& pen);

}  // namespace lanework::draw
