#include "app/draw/card.h"

#include "app/draw/card_layout.h"
#include "app/draw/card_words.h"
#include "app/draw/clean_matter.h"
#include "app/draw/pango_text.h"

namespace lanework::draw {
namespace {

Result<Pages> bound(Result<std::vector<Page>> sides, const Sheet& sheet, const std::string& title,
                    const std::string& date_iso, int start_minute_of_day) {
  if (!sides) return sides.faults();
  const std::string created = date_iso + "T" + words::clock_time(start_minute_of_day, 0) + ":00Z";
  return Pages{sheet.width, sheet.height, title, created, std::move(sides).value()};
}

}  // namespace

Result<Pages> draw_card(const CardMatter& matter, Paper paper) {
  const CardMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  return bound(lay_out_card(clean, sheet, PangoMeasure()), sheet, clean.squad + ", " + clean.date_words, clean.date_iso,
               clean.start_minute_of_day);
}

Result<Pages> draw_slip(const SlipMatter& matter, Paper paper) {
  const SlipMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  return bound(lay_out_slip(clean, sheet, PangoMeasure()), sheet, "Slip, " + clean.squad + ", " + clean.date_words,
               clean.date_iso, clean.start_minute_of_day);
}

}  // namespace lanework::draw
