// The letter to a clinician: what was seen, and what the club has to know before the player takes part again. It asks
// for no diagnosis and makes none.
#pragma once

#include "app/draw/incident.h"

namespace lanework::draw {

FormMatter referral_form(const IncidentMatter& matter);
Result<Pages> draw_referral(const IncidentMatter& matter, Paper paper);

}  // namespace lanework::draw
