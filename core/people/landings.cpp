#include "core/people/landings.h"

#include <algorithm>
#include <numeric>

namespace lanework::people {

std::vector<std::size_t> items_beyond(std::int64_t ceiling, const std::vector<std::int64_t>& landings) {
  std::vector<std::size_t> heaviest_first(landings.size());
  std::iota(heaviest_first.begin(), heaviest_first.end(), std::size_t{0});
  std::sort(heaviest_first.begin(), heaviest_first.end(), [&](std::size_t a, std::size_t b) {
    return landings[a] != landings[b] ? landings[a] > landings[b] : a > b;
  });
  std::int64_t left = std::accumulate(landings.begin(), landings.end(), std::int64_t{0});
  std::vector<std::size_t> out;
  for (const std::size_t item : heaviest_first) {
    if (left <= ceiling || landings[item] == 0) break;
    left -= landings[item];
    out.push_back(item);
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace lanework::people
