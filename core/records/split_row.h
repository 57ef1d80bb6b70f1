// A row of canonical hours to its cells, in place. Inside this folder only.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/records/columns.h"

namespace lanework::records {

using HoursCells = std::array<std::string_view, kHoursColumns>;

class RowSplitter {
 public:
  // False where the row has more cells or fewer, or a quotation that does not close at its cell's end. The cells hold
  // until the next row.
  bool split(std::string_view row, HoursCells& cells);

 private:
  std::array<std::string, kHoursColumns> unquoted_;  // kept for their memory

  bool split_quoted(std::string_view row, HoursCells& cells);
};

}  // namespace lanework::records
