// The documents of a club's folder as the independent checker takes them: nothing of what the planner's side has read
// of them, but for the rosters' cells.
#pragma once

#include "core/check/block_documents.h"
#include "core/club/read_club.h"
#include "core/door/roll_on.h"

namespace lanework::cli {

check::BlockDocuments check_documents(const club::ClubDocuments& from);

// Rows as they were read, like the rosters.
check::SoFarDocuments check_so_far(const door::SoFar& from, const club::Club& club);

}  // namespace lanework::cli
