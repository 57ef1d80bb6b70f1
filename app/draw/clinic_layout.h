// Where everything on the pack for a first evening and on the form for a visit stands.
#pragma once

#include "app/draw/card_layout.h"
#include "app/draw/clinic.h"

namespace lanework::draw {

// Texts are taken as they are (see clean_matter.h). Two pages.
Result<std::vector<Page>> lay_out_clinic(const ClinicMatter& matter, const Sheet& sheet, const TextMeasure& measure);
// One page.
Result<std::vector<Page>> lay_out_visit_form(const VisitMatter& matter, const Sheet& sheet, const TextMeasure& measure);

}  // namespace lanework::draw
