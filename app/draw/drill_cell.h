// One drill on the card: when, the picture, the name, how much, what to say, what to watch for.
#pragma once

#include "app/draw/card.h"
#include "app/draw/pen.h"

namespace lanework::draw {

// How roomy the cells are; the layout takes the roomiest that fits.
struct CellCut {
  double figure_width;
  double figure_height;
  int name_lines;  // of the name, and of the rung
  int most_cues;
  int cue_lines;    // each
  int most_watch;   // pairs shown
  int watch_lines;  // each
  bool needs;
  bool reason;      // beside the mark
  bool small_text;  // name and cues a size smaller, the dose before the rung, the mark without its frame
  double gap;       // below the cell
};

// Scale of the thick part of a cell's top rule.
struct TimeScale {
  int start_minute_of_day = 0;
  int longest_seconds = 1;  // the longest drill of the session fills the rule
};

// Draws with the top left at the point and returns the height used; with a measuring pen it only tells it.
double flow_cell(const DrillMatter& drill, const CellCut& cut, const TimeScale& scale, Point at, double width,
                 const Pen& pen);

// How many texts that a coach must read the cut leaves out. The first thing to watch for is a must, the second
// and the third fill room that is to spare.
int left_out(const DrillMatter& drill, const CellCut& cut);

}  // namespace lanework::draw
