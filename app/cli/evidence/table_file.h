// A calculator's --data: a table from a file, and the usual columns of one.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/evidence/data_table.h"
#include "core/evidence/rate_ratio.h"

namespace lanework::cli {

Result<evidence::DataTable> table_file(const std::string& path);

inline constexpr double kMostHours = 1e10;

// hours above 0; where 'none_too' also 0.
Result<std::vector<double>> hours_column(const evidence::DataTable& table, const std::string& name, bool none_too);
Result<std::vector<std::int64_t>> events_column(const evidence::DataTable& table, const std::string& name);
Result<std::vector<std::string>> names_column(const evidence::DataTable& table, const std::string& name);

// Events in hours, by row, with a name each.
struct NamedCounts {
  std::vector<std::string> names;
  std::vector<evidence::Exposed> counts;
};
struct NamedCountColumns {
  std::string name;
  std::string events = "events";
  std::string hours = "hours";
};
// Faults: events in 0 hours. Rows of one name are added up; those without hours and events are left out.
Result<NamedCounts> named_counts(const evidence::DataTable& table, const NamedCountColumns& columns);

}  // namespace lanework::cli
