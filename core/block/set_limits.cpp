#include "core/block/set_limits.h"

namespace lanework::block {

int coming_in(const Problem& problem, const Sets& sets, std::size_t spell) {
  int count = 0;
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    const bool before = spell == 0 ? problem.drills[d].current : sets[spell - 1][d] != 0;
    count += sets[spell][d] != 0 && !before ? 1 : 0;
  }
  return count;
}

bool keeps_set_limits(const Problem& problem, const Sets& sets) {
  for (std::size_t p = 0; p < sets.size(); ++p) {
    const int in = coming_in(problem, sets, p);
    const bool open = static_cast<int>(p) >= problem.begun;
    for (std::size_t d = 0; d < problem.drills.size(); ++d) {
      if (open && must_be(problem.drills[d], p) && sets[p][d] == 0) return false;
    }
    if (open && (in > most_swaps_of(problem, p) || (p > 0 && in < problem.least_swaps))) return false;
    std::vector<int> size(problem.families.size(), 0);
    for (std::size_t d = 0; d < problem.drills.size(); ++d)
      size[static_cast<std::size_t>(problem.groups[static_cast<std::size_t>(problem.drills[d].group)].family)] +=
          sets[p][d];
    for (std::size_t f = 0; f < size.size(); ++f) {
      if (size[f] != problem.families[f].drills) return false;
    }
  }
  return true;
}

Points swap_cost(const Problem& problem, const Sets& sets) {
  int count = 0;
  for (std::size_t p = 0; p < sets.size(); ++p) count += coming_in(problem, sets, p);
  return problem.swap * count;
}

}  // namespace lanework::block
