#include "core/check/lane_simulation.h"

#include <algorithm>
#include <vector>

namespace lanework::check {

std::int64_t simulated(const LaneSet& set) {
  const auto count = static_cast<std::size_t>(set.players);
  std::vector<std::int64_t> back(count, 0);  // when each player stands in the file again
  std::int64_t last_start = 0;
  std::int64_t last_return = 0;
  bool somebody_went = false;
  for (int pass = 0; pass < set.passes; ++pass) {
    const std::int64_t all_there = back.back();
    for (std::size_t player = 0; player < count; ++player) {
      const bool opens_pass = set.gathers && player == 0;
      std::int64_t start = opens_pass ? all_there : back[player];
      if (somebody_went && !opens_pass) start = std::max(start, last_start + set.gap);
      std::int64_t arrives = start + set.loop;
      if (somebody_went && !opens_pass) arrives = std::max(arrives, last_return + set.headway);
      back[player] = arrives;
      last_start = start;
      last_return = arrives;
      somebody_went = true;
    }
  }
  return last_return;
}

}  // namespace lanework::check
