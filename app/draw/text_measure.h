// How much room a text takes. Layout asks through this interface, so that it stays a pure function of its
// input and can be checked with a measure worked out by hand.
#pragma once

#include <string>
#include <vector>

#include "app/draw/page.h"

namespace lanework::draw {

struct Extent {
  double width = 0;
  double height = 0;
  bool cut = false;     // ends in an ellipsis
  double baseline = 0;  // of the first line, below the top; scripts of other fonts stand lower
};

class TextMeasure {
 public:
  virtual ~TextMeasure() = default;
  // The room taken by lead (bold) and text, wrapped to the width and cut after max_lines.
  virtual Extent extent(const std::string& lead, const std::string& text, TextStyle style, double width,
                        int max_lines) const = 0;
};

// The texts of a page that end in an ellipsis.
std::vector<std::string> cut_texts(const Page& page, const TextMeasure& measure);

}  // namespace lanework::draw
