#include "core/block/carried_targets.h"

#include <algorithm>
#include <cstddef>

namespace lanework::block {

std::vector<std::vector<int>> carried_targets(const std::vector<int>& base, const std::vector<WeekAccount>& weeks) {
  std::vector<std::vector<int>> targets(weeks.size(), base);
  for (std::size_t w = 0; w < weeks.size(); ++w) {
    if (!weeks[w].over) continue;
    std::vector<std::size_t> next;
    for (std::size_t later = w + 1; later < weeks.size() && next.size() < 2; ++later) {
      if (weeks[later].has_session) next.push_back(later);
    }
    for (std::size_t f = 0; f < base.size(); ++f) {
      const int owed = std::max(0, std::min(targets[w][f], weeks[w].promised[f]) - weeks[w].given[f]);
      const int larger = (owed + 1) / 2;
      for (std::size_t i = 0; i < next.size(); ++i) {
        int& target = targets[next[i]][f];
        target = std::min(base[f] + base[f] / 2, target + (i == 0 ? larger : owed - larger));
      }
    }
  }
  return targets;
}

}  // namespace lanework::block
