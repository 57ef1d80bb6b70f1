// The roster inside a request (docs/formats/door.md): a list of players as JSON, read and written with
// nothing lost. Spreadsheets are read by read_roster.h.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/people/player.h"

namespace lanework::people {

// roster: the array under the request's key 'roster'; file: the name faults carry. Two players with one id
// are a fault. All faults are collected.
Result<std::vector<Player>> read_players(const std::string& file, const Node& roster);

// An array that read_players gives back unchanged; what is not known is left out.
Node write_players(const std::vector<Player>& players);

}  // namespace lanework::people
