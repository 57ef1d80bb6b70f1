// The blocks of many squads at once: one squad a thread, each with its own memory. The count of threads changes
// nothing but the time.
#pragma once

#include <functional>
#include <vector>

#include "core/block/solve.h"
#include "core/door/squad_block.h"

namespace lanework::cli {

// Called from one thread at a time with the number of squads that are done.
using SquadsDone = std::function<void(std::size_t)>;

// In the order of the wishes. threads >= 1.
std::vector<door::SquadBlock> plan_blocks(std::vector<door::SquadWishes> wishes, const block::Work& work,
                                          unsigned threads, const SquadsDone& done);

}  // namespace lanework::cli
