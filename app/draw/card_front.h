// Side one but for the drills: title, finish, what to ask, ribbon, strip, changes; when to stop at the foot.
#pragma once

#include "app/draw/card.h"
#include "app/draw/pen.h"

namespace lanework::draw {

struct FrontHead {
  double height = 0;
  bool all_told = true;  // every change and every family not covered found room
};

FrontHead draw_front_head(const CardMatter& matter, const Box& content, const Pen& pen);

// Height first, with a measuring pen; then drawn with its bottom on the content's bottom.
struct FrontFoot {
  double height = 0;
  int stop_lines_shown = 0;  // of stop_always, from the first on
};
FrontFoot measure_front_foot(const CardMatter& matter, const Box& content, const Pen& pen);
void draw_front_foot(const CardMatter& matter, const Box& content, const Pen& pen);

}  // namespace lanework::draw
