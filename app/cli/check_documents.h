// The documents of a club's folder as the independent checker takes them: nothing of what the planner's side has read
// of them, but for the rosters' cells.
#pragma once

#include "core/check/block_documents.h"
#include "core/club/read_club.h"

namespace lanework::cli {

check::BlockDocuments check_documents(const club::ClubDocuments& from);

}  // namespace lanework::cli
