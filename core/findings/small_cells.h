// Which rows of a table a reader does not see: counts of fewer than five where the board reads, and where that leaves a
// single one, the next smallest too, since the sum would give it away.
#pragma once

#include <vector>

#include "core/findings/claims.h"

namespace lanework::findings {

// By row.
std::vector<bool> withheld_rows(const std::vector<int>& counts, Reader reader);

}  // namespace lanework::findings
