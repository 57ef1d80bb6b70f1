#include "core/evidence/data_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace lanework::evidence {
namespace {

std::optional<double> number_in(const std::string& cell) {
  std::string text = cell;
  if (text.find('.') == std::string::npos && std::count(text.begin(), text.end(), ',') == 1) text[text.find(',')] = '.';
  double value = 0;
  const char* end = text.data() + text.size();
  const char* begin = text.data() + (text.starts_with('+') ? 1 : 0);
  const auto [stopped, error] = std::from_chars(begin, end, value);
  if (error != std::errc() || stopped != end || !std::isfinite(value)) return {};
  return value;
}

// Each cell through 'read', which gives nothing for what it cannot take.
template <class Value, class Read>
Result<std::vector<Value>> read_column(const DataTable& table, std::size_t column, const std::string& expected,
                                       const Read& read) {
  std::vector<Value> out;
  out.reserve(table.rows());
  Faults faults;
  std::size_t count = 0;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::string& cell = table.column[column][row];
    std::optional<Value> value = read(cell);
    if (value) {
      out.push_back(std::move(*value));
    } else if (++count <= kMostCellFaults) {
      const FaultCode code = cell.empty() ? FaultCode::kMissing : FaultCode::kWrongType;
      faults.push_back({code,
                        {table.file, table.lines[row], 0, table.names[column]},
                        cell.empty() ? "nothing" : quote(cell),
                        expected,
                        {}});
    }
  }
  if (count > kMostCellFaults) {
    faults.push_back({FaultCode::kWrongType,
                      {table.file, 0, 0, table.names[column]},
                      std::to_string(count) + " such cells",
                      "none; the first " + std::to_string(kMostCellFaults) + " are listed",
                      {}});
  }
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace

Result<std::size_t> find_column(const DataTable& table, std::string_view name, std::string_view asked_by) {
  const auto found = std::find(table.names.begin(), table.names.end(), name);
  if (found != table.names.end()) return static_cast<std::size_t>(found - table.names.begin());
  std::string there;
  for (const std::string& one : table.names) there += (there.empty() ? "" : ", ") + quote(one);
  return Fault{FaultCode::kUnknownName,
               {table.file, 0, 0, std::string(asked_by)},
               quote(std::string(name)),
               "a column of the table: " + there,
               {}};
}

Result<std::vector<double>> numbers_of(const DataTable& table, std::size_t column, const NumberLimits& limits) {
  return read_column<double>(table, column, limits.expected, [&](const std::string& cell) -> std::optional<double> {
    const std::optional<double> value = number_in(cell);
    if (!value || *value < limits.least || *value > limits.most) return {};
    return value;
  });
}

Result<std::vector<std::int64_t>> counts_of(const DataTable& table, std::size_t column, std::int64_t most) {
  return read_column<std::int64_t>(
      table, column, "a whole number, 0 to " + std::to_string(most),
      [&](const std::string& cell) -> std::optional<std::int64_t> {
        const std::optional<double> value = number_in(cell);
        if (!value || *value < 0 || *value > static_cast<double>(most) || *value != std::floor(*value)) return {};
        return static_cast<std::int64_t>(*value);
      });
}

Result<std::vector<std::string>> names_of(const DataTable& table, std::size_t column) {
  return read_column<std::string>(table, column, "a name", [](const std::string& cell) -> std::optional<std::string> {
    if (cell.empty()) return {};
    return cell;
  });
}

}  // namespace lanework::evidence
