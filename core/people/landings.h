// A player who may land less than the others: which drills of a session are done with fewer landings, or none.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace lanework::people {

// The items of a session that must lose landings so that the others stay within the player's own ceiling: as few as can
// be, the heaviest first, of equal ones the later; ascending. landings: weighted, of one player, item by item, in
// thousandths like the ceiling. Sorting: O(n log n).
std::vector<std::size_t> items_beyond(std::int64_t ceiling, const std::vector<std::int64_t>& landings);

}  // namespace lanework::people
