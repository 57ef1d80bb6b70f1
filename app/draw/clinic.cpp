#include "app/draw/clinic.h"

#include "app/draw/clean_matter.h"
#include "app/draw/clinic_layout.h"
#include "app/draw/pango_text.h"

namespace lanework::draw {
namespace {

Result<Pages> bound(Result<std::vector<Page>> sides, const Sheet& sheet, const std::string& title,
                    const std::string& date_iso) {
  if (!sides) return sides.faults();
  return Pages{sheet.width, sheet.height, title, date_iso + "T00:00:00Z", std::move(sides).value()};
}

}  // namespace

Result<Pages> draw_clinic(const ClinicMatter& matter, Paper paper) {
  const ClinicMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  return bound(lay_out_clinic(clean, sheet, PangoMeasure()), sheet, "First evening, " + clean.squad, clean.date_iso);
}

Result<Pages> draw_visit_form(const VisitMatter& matter, Paper paper) {
  const VisitMatter clean = cleaned(matter);
  const Sheet sheet = sheet_of(paper);
  return bound(lay_out_visit_form(clean, sheet, PangoMeasure()), sheet, "Visit, " + clean.squad, clean.date_iso);
}

}  // namespace lanework::draw
