// A measure of text that can be worked out by hand: every character 0.55 of the size wide, every line 1.25
// of the size high, lines filled to the brim.
#pragma once

#include <algorithm>
#include <cmath>

#include "app/draw/text_measure.h"
#include "app/draw/tokens.h"

namespace lanework::draw {

class FixedMeasure : public TextMeasure {
 public:
  Extent extent(const std::string& lead, const std::string& text, TextStyle style, double width,
                int max_lines) const override {
    const double size = typeface(style).size;
    const auto characters = [](const std::string& words) {
      return static_cast<double>(std::count_if(
          words.begin(), words.end(), [](char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U; }));
    };
    const double whole = (characters(lead) + characters(text)) * 0.55 * size;
    const double needed = std::max(std::ceil(whole / width), 1.0);
    const double lines = std::min(needed, static_cast<double>(max_lines));
    return {std::min(whole, width), lines * 1.25 * size, needed > lines, size};
  }
};

}  // namespace lanework::draw
