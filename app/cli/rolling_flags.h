// The flags of a block that has begun: what really happened so far, and which day it is.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/club/allocation.h"
#include "core/door/roll_on.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct RollingFlags {
  std::string sessions;
  std::string today;

  [[nodiscard]] bool given() const { return !sessions.empty() || !today.empty(); }
};

void add_rolling_flags(CLI::App& command, RollingFlags& flags);

// The day and the rows of the file; no rows where none is named. Faults of both.
Result<door::SoFar> read_so_far(const RollingFlags& flags, const club::Club& club, const club::Allocation& allocation);

}  // namespace lanework::cli
