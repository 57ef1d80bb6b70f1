#include "core/integer_program/table_builder.h"

#include <algorithm>
#include <utility>

namespace lanework::integer_program {

void sort_by_column(std::vector<Term>& terms) {
  std::sort(terms.begin(), terms.end(), [](const Term& a, const Term& b) { return a.column < b.column; });
}

TableBuilder::TableBuilder() { add_column({"one", false, 1, 1}); }

int TableBuilder::add_column(Column column) {
  columns_.push_back(std::move(column));
  return static_cast<int>(columns_.size()) - 1;
}

void TableBuilder::add_row(Row row, bool may_be_empty) {
  if (row.terms.empty() && may_be_empty) {
    row.terms.push_back({kOne, 1});
    row.bound += 1;
  }
  if (row.terms.empty()) return;
  sort_by_column(row.terms);
  rows_.push_back(std::move(row));
}

}  // namespace lanework::integer_program
