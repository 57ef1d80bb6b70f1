// What 'lanework club check' tells: a line a squad, what falls out, who is in two squads, remarks. Players by id.
#pragma once

#include <string>

#include "core/base/document.h"
#include "core/club/consistency.h"

namespace lanework::cli {

struct ClubReport {
  club::Club club;
  club::Allocation allocation;  // no calendars where the settings cannot be trusted
  club::Consistency found;
};

std::string club_text(const ClubReport& report);
Node club_node(const ClubReport& report, const Faults& faults);

}  // namespace lanework::cli
