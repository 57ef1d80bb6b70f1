// A squad's sessions of the block as a calendar: place, lanes and drills, never a player.
#pragma once

#include <chrono>
#include <string>

#include "app/cli/club_plan.h"
#include "core/club/icalendar.h"

namespace lanework::cli {

club::SquadEvents calendar_events(const ClubPlan& plan, const club::ClubSquad& squad);

// '20261120T080000Z'.
std::string calendar_stamp(std::chrono::system_clock::time_point moment);

}  // namespace lanework::cli
