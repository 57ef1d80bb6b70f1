#include "app/cli/evidence/table_file.h"

#include <unordered_map>

#include "app/read/data_table.h"
#include "app/read/files.h"

namespace lanework::cli {
namespace {

template <class T>
void take(const Result<T>& result, Faults& faults) {
  if (!result) faults.insert(faults.end(), result.faults().begin(), result.faults().end());
}

}  // namespace

Result<evidence::DataTable> table_file(const std::string& path) {
  const auto bytes = read::read_file(path, {"", 0, 0, "--data"});
  if (!bytes) return bytes.faults();
  return read::read_data_table(path, bytes.value());
}

Result<std::vector<double>> hours_column(const evidence::DataTable& table, const std::string& name, bool none_too) {
  const auto column = evidence::find_column(table, name, "hours");
  if (!column) return column.faults();
  const double least = none_too ? 0 : 1e-6;
  return evidence::numbers_of(table, column.value(),
                              {least, kMostHours, none_too ? "hours, 0 or more" : "hours, above 0"});
}

Result<std::vector<std::int64_t>> events_column(const evidence::DataTable& table, const std::string& name) {
  const auto column = evidence::find_column(table, name, "events");
  if (!column) return column.faults();
  return evidence::counts_of(table, column.value());
}

Result<std::vector<std::string>> names_column(const evidence::DataTable& table, const std::string& name) {
  const auto column = evidence::find_column(table, name, "columns");
  if (!column) return column.faults();
  return evidence::names_of(table, column.value());
}

Result<NamedCounts> named_counts(const evidence::DataTable& table, const NamedCountColumns& columns) {
  const auto names = names_column(table, columns.name);
  const auto events = events_column(table, columns.events);
  const auto hours = hours_column(table, columns.hours, true);
  Faults faults;
  take(names, faults);
  take(events, faults);
  take(hours, faults);
  if (!faults.empty()) return faults;
  NamedCounts out;
  std::unordered_map<std::string, std::size_t> place;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::int64_t count = events.value()[row];
    if (hours.value()[row] == 0 && count == 0) continue;
    const auto [at, is_new] = place.emplace(names.value()[row], out.names.size());
    if (is_new) {
      out.names.push_back(names.value()[row]);
      out.counts.push_back({0, 0});
    }
    out.counts[at->second].events += count;
    out.counts[at->second].hours += hours.value()[row];
  }
  for (std::size_t i = 0; i < out.names.size(); ++i) {
    if (out.counts[i].hours > 0) continue;
    faults.push_back({FaultCode::kContradiction,
                      {table.file, 0, 0, columns.hours},
                      std::to_string(out.counts[i].events) + " events of " + quote(out.names[i]) + " in 0 hours",
                      "hours above 0 where something happened",
                      {}});
  }
  if (faults.empty() && out.names.empty())
    faults.push_back(
        {FaultCode::kMissing, {table.file, 0, 0, columns.hours}, "no hours at all", "rows with hours", {}});
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::cli
