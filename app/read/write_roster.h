// Players to a roster file that read_roster gives back unchanged, apart from the rows they stand in.
#pragma once

#include <string>
#include <vector>

#include "core/people/player.h"

namespace lanework::read {

// Comma-separated UTF-8; a column that nobody has anything in is left out.
std::string roster_text(const std::vector<people::Player>& players);

}  // namespace lanework::read
