// The shipped table of growth.
#pragma once

#include "core/care/growth/growth_table.h"
#include "tests/catalogue/shipped.h"

namespace lanework::care::growth::test {

inline const GrowthTable& shipped_table() {
  static const GrowthTable kTable = [] {
    const Document document = catalogue::test::read_toml(catalogue::test::shipped_folder() / "care" / "growth.toml");
    Result<GrowthTable> table = read_growth_table(document);
    if (!table.ok()) throw std::runtime_error(catalogue::test::all_lines(table.faults()));
    return std::move(table).value();
  }();
  return kTable;
}

}  // namespace lanework::care::growth::test
