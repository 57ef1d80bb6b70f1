// Credits: quarter-targets of a family, from the work a dose asks of one player.
#pragma once

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"

namespace lanework::plan {

// sets x amount x (tempo | 1 s | kWorkOfAPass), both sides (core/plan/constants.def).
Milliseconds work_of(const catalogue::Drill& drill, const catalogue::DoseStep& step);

// Quarters of the family's session_work, rounded half up, 1 .. kMostCredits. Where the family wants eccentric work
// first at this age of the youngest, the work of any other drill counts for its share only.
int credits_of(const catalogue::Drill& drill, const catalogue::DoseStep& step, const catalogue::FamilyRow& family,
               int age);

}  // namespace lanework::plan
