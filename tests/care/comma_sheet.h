// A small sheet written as commas and lines, for tests: no quotation marks.
#pragma once

#include <sstream>
#include <string>

#include "core/people/roster_sheet.h"

namespace lanework::care::test {

inline people::Sheet comma_sheet(const std::string& text, const std::string& file = "sheet.csv") {
  people::Sheet sheet{file, {}};
  std::istringstream lines(text);
  int number = 0;
  for (std::string line; std::getline(lines, line);) {
    people::SheetRow row{++number, {}};
    for (std::size_t from = 0; from <= line.size();) {
      const std::size_t comma = std::min(line.find(',', from), line.size());
      row.cells.push_back({line.substr(from, comma - from), number});
      from = comma + 1;
    }
    if (!line.empty()) sheet.rows.push_back(row);
  }
  return sheet;
}

// Every fault as a user reads it, one a line.
inline std::string lines_of(const Faults& faults) {
  std::string out;
  for (const Fault& fault : faults) out += to_line(fault) + "\n";
  return out;
}

inline Date day(const char* iso) { return *parse_iso_date(iso); }

}  // namespace lanework::care::test
