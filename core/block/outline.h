// What a block is made from: the squad's evenings as the calendar has them, the house routine, and what the
// lead has fixed before solving. Built by the door from the club's folder.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/block/rolling.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/session/evening.h"

namespace lanework::block {

struct Outline {
  const catalogue::Catalogue* catalogue = nullptr;
  const catalogue::Routine* routine = nullptr;            // the house routine: the set that stands now
  const catalogue::Routine* match_day_routine = nullptr;  // of the sessions on match days
  Date monday;                                            // of the first week
  int weeks = 0;                                          // 3..8
  std::vector<session::Evening> evenings;                 // by date and start, all inside the weeks
  // Rungs that the lead has confirmed, by drill id and week; without one the routine's rung holds, or the easiest.
  std::map<std::string, std::vector<std::string>> rungs;
  bool free_composition = false;   // the lead has asked for it: the first set may have any drills
  std::optional<Rolling> rolling;  // of a block that has begun
};

// Weeks of each spell: of three or four weeks, a shorter one last.
std::vector<int> spell_of_week(int weeks);

}  // namespace lanework::block
