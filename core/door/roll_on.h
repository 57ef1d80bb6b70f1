// A squad's block that has begun: the plan that stands and what really happened, put to the wishes for the rest.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/block/rolling.h"
#include "core/club/session_rows.h"
#include "core/door/squad_block.h"

namespace lanework::door {

// What is known of the block so far. A session counts as over before today, and today where a row tells of it.
struct SoFar {
  Date today;
  std::string standing_file;           // as the user named it
  std::vector<club::SessionRow> rows;  // of any squads
};

// Faults: a day that is over on which plan and calendar do not agree, a drill left out that was not planned.
Result<SquadWishes> roll_on(SquadWishes wishes, block::Standing standing, const SoFar& so_far);

}  // namespace lanework::door
