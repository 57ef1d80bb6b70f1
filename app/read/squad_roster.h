// Who is of a squad, and where it usually is: read from its squad file without an evening.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/document.h"
#include "core/base/result.h"
#include "core/people/player.h"

namespace lanework::read {

struct SquadRoster {
  std::string club;
  std::string squad;                    // its name
  std::vector<people::Player> players;  // of this squad, in roster order
  std::optional<std::string> venue;     // file of its strip's action plan
};

// day: ages are reckoned for it. Faults of squad file, roster and strip are collected.
Result<SquadRoster> read_squad_roster(const std::string& squad_path, Date day);

}  // namespace lanework::read
