#include "app/draw/summary.h"

#include <algorithm>

#include "app/draw/card_layout.h"
#include "app/draw/clean_matter.h"
#include "app/draw/pango_text.h"
#include "app/draw/summary_layout.h"

namespace lanework::draw {

Result<Pages> draw_summary(const SummaryMatter& matter, Paper paper) {
  const SummaryMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  auto sides = lay_out_summary(clean, sheet, PangoMeasure());
  if (!sides) return sides.faults();
  return Pages{sheet.width, sheet.height, "Block, " + clean.club, clean.date_iso + "T00:00:00Z",
               std::move(sides).value()};
}

}  // namespace lanework::draw
