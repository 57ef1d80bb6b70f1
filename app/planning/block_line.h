// A drill of a block answer as a line of the catalogue.
#pragma once

#include <optional>

#include "app/read/block_answer.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"

namespace lanework::planning {

// Empty where the catalogue does not have it.
std::optional<catalogue::RoutineLine> line_of(const read::BlockDrill& drill, const catalogue::Catalogue& catalogue);

}  // namespace lanework::planning
