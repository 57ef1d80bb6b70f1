// Where everything on a card stands: a pure function of the matter, the paper and a measure of text.
#pragma once

#include "app/draw/card.h"
#include "app/draw/text_measure.h"

namespace lanework::draw {

struct Sheet {
  double width;
  double height;
};
Sheet sheet_of(Paper paper);
Box content_of(const Sheet& sheet);

// Texts are taken as they are (see clean_matter.h). Two sides at most.
Result<std::vector<Page>> lay_out_card(const CardMatter& matter, const Sheet& sheet, const TextMeasure& measure);
Result<std::vector<Page>> lay_out_slip(const SlipMatter& matter, const Sheet& sheet, const TextMeasure& measure);

}  // namespace lanework::draw
