// Side two but for the drills: its title, when to stop a drill, what found no room in front, and the form
// for an emergency, filled in by hand.
#pragma once

#include "app/draw/card.h"
#include "app/draw/pen.h"

namespace lanework::draw {

double draw_back_head(const CardMatter& matter, const Box& content, const Pen& pen);

// What the back lists besides the stop lines of tonight's drills.
struct BackLists {
  std::vector<std::string> stop_always;  // general stop lines that found no room in front
  bool with_changes = false;             // what is different tonight, in full
  double most_height = 1e9;
};
// Returns the height used.
double draw_back_lists(const CardMatter& matter, const BackLists& lists, Point at, double width, const Pen& pen);
// writing_line: the height of a line to write on.
double draw_emergency(const CardMatter& matter, double writing_line, Point at, double width, const Pen& pen);

}  // namespace lanework::draw
