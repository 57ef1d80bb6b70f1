// Columns and rows of an integer program, in the order they are added.
#pragma once

#include <utility>

#include "core/integer_program/program.h"

namespace lanework::integer_program {

// The first column, 'one', is fixed at 1: it carries constants.
inline constexpr int kOne = 0;

void sort_by_column(std::vector<Term>& terms);

class TableBuilder {
 public:
  TableBuilder();

  // Its position.
  int add_column(Column column);
  // A row without terms would be lost on some readers. With 'may_be_empty' it gets one that changes nothing
  // that is possible (bound + 1 for one, which is 1); without, it is left out.
  void add_row(Row row, bool may_be_empty = false);

  std::vector<Column> take_columns() { return std::move(columns_); }
  std::vector<Row> take_rows() { return std::move(rows_); }

 private:
  std::vector<Column> columns_;
  std::vector<Row> rows_;
};

}  // namespace lanework::integer_program
