// Rows of a spreadsheet to players. Everything a lead may have written is read strictly: what is not
// understood is a fault with its line and heading, and all faults are collected (at most 50 are listed).
// Cells stay inert text: nothing in them is ever a formula or markup.
#pragma once

#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/people/player.h"
#include "core/people/roster_dates.h"
#include "core/people/roster_sheet.h"

namespace lanework::people {

inline constexpr int kFewestPlayers = 2;
inline constexpr int kMostPlayers = 60;       // of one squad
inline constexpr int kMostRosterRows = 5000;  // of a whole club
inline constexpr std::size_t kMostFaultsListed = 50;

struct RosterReading {
  Date day;           // of the evening: for ages and birth dates
  std::string squad;  // limits on the number of players hold for this squad; empty: for the whole roster
  DateOrder order = DateOrder::kAsTheColumnTells;
  SerialSystem serials = SerialSystem::k1900;
  TextForms forms;
  bool whole_club = false;  // no limits on the number of players but kMostRosterRows
};

// The whole roster comes back, in the order of its rows, also players of other squads: restrictions and
// partners name players by id.
Result<std::vector<Player>> read_roster_rows(const Sheet& sheet, const RosterReading& reading);

}  // namespace lanework::people
