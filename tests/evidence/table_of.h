// A table of text, written down in a test.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/evidence/data_table.h"
#include "tests/evidence/csv_rows.h"

namespace lanework::evidence {

inline DataTable table_of(std::vector<std::string> names, const std::vector<std::vector<std::string>>& rows) {
  DataTable table;
  table.file = "weeks.csv";
  table.names = std::move(names);
  table.column.resize(table.names.size());
  int line = 1;
  for (const std::vector<std::string>& row : rows) {
    table.lines.push_back(++line);
    for (std::size_t c = 0; c < table.names.size(); ++c) table.column[c].push_back(row.at(c));
  }
  return table;
}

// Of a file without quotes.
inline DataTable table_of_file(const std::string& path, const std::vector<std::string>& names) {
  std::vector<std::vector<std::string>> rows;
  for (const CsvRow& row : csv_rows(path)) {
    rows.emplace_back();
    for (const std::string& name : names) rows.back().push_back(row.at(name));
  }
  return table_of(names, rows);
}

}  // namespace lanework::evidence
