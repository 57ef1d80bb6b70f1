// Where everything on the summary of a block stands.
#pragma once

#include "app/draw/card_layout.h"
#include "app/draw/summary.h"

namespace lanework::draw {

Result<std::vector<Page>> lay_out_summary(const SummaryMatter& matter, const Sheet& sheet, const TextMeasure& measure);

}  // namespace lanework::draw
