// A table of text as somebody's file has it: columns by name, every cell with its line. What is in the cells is read
// column by column, as numbers, counts or names; every cell that cannot be is a fault with line and column.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace lanework::evidence {

struct DataTable {
  std::string file;
  std::vector<std::string> names;                // of the columns, each once
  std::vector<std::vector<std::string>> column;  // [column][row], as many rows in each
  std::vector<int> lines;                        // of the rows

  [[nodiscard]] std::size_t rows() const { return lines.size(); }
};

inline constexpr std::size_t kMostCellFaults = 20;  // of one column that are listed; then the rest is counted

// The position of a column, or a fault that names those there are. 'asked_by' is where the user named it ('--hours').
Result<std::size_t> find_column(const DataTable& table, std::string_view name, std::string_view asked_by);

struct NumberLimits {
  double least = 0;
  double most = 0;
  std::string expected;  // 'hours, 0 or more'
};

// A decimal point or a decimal comma; no unit, no thousands.
Result<std::vector<double>> numbers_of(const DataTable& table, std::size_t column, const NumberLimits& limits);
// Whole numbers from 0 on.
Result<std::vector<std::int64_t>> counts_of(const DataTable& table, std::size_t column,
                                            std::int64_t most = 1'000'000'000);
// Names: text that is not empty.
Result<std::vector<std::string>> names_of(const DataTable& table, std::size_t column);

}  // namespace lanework::evidence
