// Side two but for the drills: its title, when to stop a drill, what found no room in front, the danger
// signs, and the action plan: as far as it is known, else lines to fill in by hand.
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
// How the danger signs and the action plan are set.
struct PlanSetting {
  double writing_line = 21;  // the height of a line to write on
  int signs = 3;             // how many of the danger signs' lines are shown, from the first on
};
double draw_emergency(const CardMatter& matter, const PlanSetting& setting, Point at, double width, const Pen& pen);

}  // namespace lanework::draw
