#include "core/findings/small_cells.h"

#include <algorithm>

namespace lanework::findings {

std::vector<bool> withheld_rows(const std::vector<int>& counts, Reader reader) {
  std::vector<bool> out;
  for (const int count : counts) out.push_back(is_withheld(reader, count));
  if (std::count(out.begin(), out.end(), true) != 1) return out;
  std::size_t next = counts.size();
  for (std::size_t row = 0; row < counts.size(); ++row) {
    if (out[row] || counts[row] == 0) continue;
    if (next == counts.size() || counts[row] < counts[next]) next = row;
  }
  if (next < counts.size()) out[next] = true;
  return out;
}

}  // namespace lanework::findings
