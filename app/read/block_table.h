// A block's sessions as an open table: one row a session and drill, and a descriptor that says what the columns are
// (Frictionless Data: Tabular Data Package, version 1). Nothing in it is about a player.
#pragma once

#include <string>
#include <vector>

#include "app/read/block_answer.h"

namespace lanework::read {

inline constexpr const char* kBlockTableName = "sessions.csv";

// Comma-separated UTF-8, lines end in CRLF (RFC 4180). A text that a spreadsheet would take for a formula has an
// apostrophe before it. A session without drills has one row with these columns empty.
std::string block_table(const std::vector<const SquadBlock*>& squads);

// Of that file, as JSON. name: of the club.
std::string block_table_descriptor(const std::string& name);

}  // namespace lanework::read
