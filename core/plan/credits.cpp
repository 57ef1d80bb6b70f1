#include "core/plan/credits.h"

#include <algorithm>

#include "core/plan/constants.h"

namespace lanework::plan {

Milliseconds work_of(const catalogue::Drill& drill, const catalogue::DoseStep& step) {
  Milliseconds unit(kWorkOfAPass);
  if (drill.dose.kind == catalogue::DoseKind::kReps) unit = drill.dose.tempo;
  if (drill.dose.kind == catalogue::DoseKind::kSeconds) unit = Milliseconds(1000);
  return unit * step.sets * step.amount * (drill.dose.sides ? 2 : 1);
}

int credits_of(const catalogue::Drill& drill, const catalogue::DoseStep& step, const catalogue::FamilyRow& family,
               int age) {
  const bool counts_less =
      family.eccentric_first && age >= family.eccentric_first->from_age && drill.loads.eccentric_thousandths == 0;
  const std::int64_t percent = counts_less ? family.eccentric_first->other_work_percent : 100;
  const std::int64_t full = family.session_work.count * 1000 * 100;
  const std::int64_t quarters = (8 * work_of(drill, step).count * percent + full) / (2 * full);
  return static_cast<int>(std::clamp<std::int64_t>(quarters, 1, kMostCredits));
}

}  // namespace lanework::plan
