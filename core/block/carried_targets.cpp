#include "core/block/carried_targets.h"

#include <algorithm>
#include <cstddef>

#include "core/block/constants.h"

namespace lanework::block {

std::vector<std::vector<int>> carried_targets(const std::vector<int>& base, const std::vector<WeekAccount>& weeks) {
  std::vector<std::vector<int>> targets(weeks.size(), base);
  for (std::size_t w = 0; w < weeks.size(); ++w) {
    if (!weeks[w].over) continue;
    std::vector<std::size_t> next;
    for (std::size_t later = w + 1; later < weeks.size() && static_cast<int>(next.size()) < kWeeksThatMakeUp; ++later) {
      if (weeks[later].has_session) next.push_back(later);
    }
    for (std::size_t f = 0; f < base.size(); ++f) {
      const int owed = std::max(0, std::min(targets[w][f], weeks[w].promised[f]) - weeks[w].given[f]);
      for (int i = 0; i < static_cast<int>(next.size()); ++i) {
        const int share = owed / kWeeksThatMakeUp + (i < owed % kWeeksThatMakeUp ? 1 : 0);
        int& target = targets[next[static_cast<std::size_t>(i)]][f];
        target = std::min(base[f] + base[f] * kMadeUpPercent / 100, target + share);
      }
    }
  }
  return targets;
}

}  // namespace lanework::block
