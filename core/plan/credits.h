// Credits: quarter-targets of a family, from the work a dose asks of one player.
#pragma once

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"

namespace lanework::plan {

// A pass of the lane counts as this much work, whatever the lane (own judgement).
inline constexpr Milliseconds kWorkOfAPass{8'000};
// More quarters than this in one option are not counted.
inline constexpr int kMostCredits = 40;

// sets x amount x (tempo | 1 s | kWorkOfAPass), both sides.
Milliseconds work_of(const catalogue::Drill& drill, const catalogue::DoseStep& step);

// Quarters of the family's session_work, rounded half up, 1 .. kMostCredits.
int credits_of(const catalogue::Drill& drill, const catalogue::DoseStep& step, const catalogue::FamilyRow& family);

}  // namespace lanework::plan
