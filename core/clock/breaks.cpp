#include "core/clock/breaks.h"

#include <cstdint>
#include <cstdlib>

namespace lanework::clock {

std::vector<int> breaks_before(const std::vector<Seconds>& parts, int count) {
  std::vector<int> out(parts.size(), 0);
  if (parts.size() < 2) {
    for (int& before : out) before = count;
    return out;
  }
  std::int64_t whole = 0;
  for (const Seconds part : parts) whole += part.count;
  for (int k = 1; k <= count; ++k) {
    std::size_t nearest = 1;
    std::int64_t least = -1;
    std::int64_t before = 0;
    for (std::size_t gap = 1; gap < parts.size(); ++gap) {
      before += parts[gap - 1].count;
      const std::int64_t away = std::abs(before * (count + 1) - whole * k);
      if (least >= 0 && away >= least) continue;
      least = away;
      nearest = gap;
    }
    ++out[nearest];
  }
  return out;
}

}  // namespace lanework::clock
