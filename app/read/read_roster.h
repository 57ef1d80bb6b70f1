// A roster file, as a spreadsheet exported it, to players. docs/formats/roster.md says what is read.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/people/player.h"
#include "core/people/roster_dates.h"

namespace lanework::read {

// What the lead states about the file where the file itself does not tell.
struct RosterStatement {
  people::DateOrder order = people::DateOrder::kAsTheColumnTells;
  people::SerialSystem serials = people::SerialSystem::k1900;
  std::string encoding;     // one of encoding_names(); empty: found out
  std::string squad;        // whose number of players must be 2 to 60; empty: the whole file's
  bool whole_club = false;  // any number of players will do: squads are counted where they are read
};

// evening: the day ages are reckoned for. Every fault of the file is collected. The whole roster comes
// back, also players of other squads than the one stated.
Result<std::vector<people::Player>> read_roster(const std::string& file, std::string_view bytes, Date evening,
                                                const RosterStatement& stated = {});

}  // namespace lanework::read
