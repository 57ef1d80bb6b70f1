// The rows of a small table whose cells hold no quotes, by column.
#pragma once

#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

namespace lanework::evidence {

using CsvRow = std::map<std::string, std::string>;

inline std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream in(line);
  for (std::string cell; std::getline(in, cell, ',');) cells.push_back(cell);
  return cells;
}

// Empty where the file is not there.
inline std::vector<CsvRow> csv_rows(const std::string& path) {
  std::ifstream in(path);
  std::string line;
  std::getline(in, line);
  const std::vector<std::string> names = cells_of(line);
  std::vector<CsvRow> rows;
  while (std::getline(in, line)) {
    const std::vector<std::string> cells = cells_of(line);
    CsvRow row;
    for (std::size_t i = 0; i < names.size() && i < cells.size(); ++i) row[names[i]] = cells[i];
    rows.push_back(std::move(row));
  }
  return rows;
}

inline double number(const CsvRow& row, const std::string& column) { return std::stod(row.at(column)); }

}  // namespace lanework::evidence
