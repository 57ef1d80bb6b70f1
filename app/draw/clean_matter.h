// Every text of a page, made safe to draw.
#pragma once

#include "app/draw/card.h"
#include "app/draw/clinic.h"
#include "app/draw/emergency_sheet.h"
#include "app/draw/form.h"
#include "app/draw/summary.h"

namespace lanework::draw {

CardMatter cleaned(CardMatter matter);
SlipMatter cleaned(SlipMatter matter);
ClinicMatter cleaned(ClinicMatter matter);
VisitMatter cleaned(VisitMatter matter);
SummaryMatter cleaned(SummaryMatter matter);
FormMatter cleaned(FormMatter matter);
EmergencySheetMatter cleaned(EmergencySheetMatter matter);

}  // namespace lanework::draw
