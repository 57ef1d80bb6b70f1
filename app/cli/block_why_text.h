// Where the numbers of a club's blocks come from: every one that advises, limits or scores, with its source.
#pragma once

#include <string>
#include <vector>

#include "core/door/squad_block.h"

namespace lanework::cli {

std::string block_why_text(const std::vector<door::SquadBlock>& blocks);

}  // namespace lanework::cli
