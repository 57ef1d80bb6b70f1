// Short lists of sentences, in columns.
#pragma once

#include <string>
#include <vector>

#include "app/draw/pen.h"

namespace lanework::draw {

struct ListEntry {
  std::string text;
  std::string lead;  // before it, in bold; may be empty
};

// How a list is set.
struct ListSetting {
  TextStyle style = TextStyle::kBody;
  int columns = 1;  // as low as can be
  double column_gap = 18;
  int lines_each = 4;        // an entry is cut after so many lines
  double most_height = 1e9;  // as many entries, from the first on, as stay within it
};

struct ListRoom {
  double height = 0;
  int shown = 0;  // entries that found room, from the first on
};

// Entries fill the first column from the top, then the next; a dot before each.
ListRoom flow_list(const std::vector<std::string>& entries, Point at, double width, const ListSetting& setting,
                   const Pen& pen);

ListRoom flow_list(const std::vector<ListEntry>& entries, Point at, double width, const ListSetting& setting,
                   const Pen& pen);

// A heading over a list; 'act on this now' bears the one warm mark, a triangle that also reads in grey.
double flow_heading(const std::string& words, Point at, double width, bool act_now, const Pen& pen);

}  // namespace lanework::draw
