// The blocks of a club as the lead reads them in a terminal.
#pragma once

#include <string>
#include <vector>

#include "core/door/squad_block.h"

namespace lanework::cli {

// One line a squad, then what changes at the spells and what falls short; with one squad also its weeks, session by
// session.
std::string blocks_text(const std::vector<door::SquadBlock>& blocks);

}  // namespace lanework::cli
