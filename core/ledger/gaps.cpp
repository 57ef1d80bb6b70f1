#include "core/ledger/gaps.h"

#include <algorithm>
#include <tuple>

namespace lanework::ledger {

std::vector<Gap> gaps_without(std::vector<Gap> gaps, std::vector<Gap> gone) {
  std::sort(gaps.begin(), gaps.end());
  std::sort(gone.begin(), gone.end());
  std::vector<Gap> out;
  auto next = gone.begin();
  for (const Gap& gap : gaps) {
    while (next != gone.end() && std::tie(next->device, next->to) < std::tie(gap.device, gap.from)) ++next;
    std::int64_t from = gap.from;
    // One may reach into the gap after this one.
    for (auto at = next; at != gone.end() && at->device == gap.device && at->from <= gap.to; ++at) {
      if (at->from > from) out.push_back({gap.device, from, at->from - 1});
      from = std::max(from, at->to + 1);
    }
    if (from <= gap.to) out.push_back({gap.device, from, gap.to});
  }
  return out;
}

}  // namespace lanework::ledger
