// What stood in a squad's plans for evenings that are over, for whoever asks later what was planned for a child.
#pragma once

#include <string>
#include <vector>

#include "core/base/date.h"

namespace lanework::planning {

struct MadePlan {
  std::string made;  // '2026-11-26T18:05:00+01:00', by the club's clock
  std::string text;  // as 'lanework block --json' answers
};

struct PlannedEvening {
  std::string begins;  // '2026-11-26 18:00'
  std::string squad;
  int minutes = 0;
  std::vector<std::string> drills;  // ids, in order
  std::string planned;              // '2026-11-24 20:15'
};

// Each as it was planned last before it began; from that day to now, by when they began. plans: the earliest first; one
// that cannot be read, or has nothing of the squad, is passed over. now: as 'made'.
std::vector<PlannedEvening> planned_evenings(const std::string& squad, const std::vector<MadePlan>& plans, Date from,
                                             const std::string& now);

}  // namespace lanework::planning
