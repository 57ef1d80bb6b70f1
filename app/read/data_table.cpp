#include "app/read/data_table.h"

#include <algorithm>

#include "app/read/decode_text.h"
#include "app/read/separated_values.h"
#include "core/people/roster_rows.h"

namespace lanework::read {
namespace {

bool is_blank(const people::SheetRow& row) {
  return std::all_of(row.cells.begin(), row.cells.end(),
                     [](const people::SheetCell& cell) { return people::tidy(cell.text).empty(); });
}

Faults take_headings(const people::Sheet& sheet, evidence::DataTable& table) {
  Faults faults;
  for (const people::SheetCell& cell : sheet.rows.front().cells) {
    const std::string name = people::tidy(cell.text);
    if (name.empty()) {
      faults.push_back({FaultCode::kMissing,
                        {sheet.file, cell.line, 0, {}},
                        "an empty heading",
                        "a name for each of the " + std::to_string(sheet.rows.front().cells.size()) + " columns",
                        {}});
    } else if (std::find(table.names.begin(), table.names.end(), name) != table.names.end()) {
      faults.push_back(
          {FaultCode::kDuplicate, {sheet.file, cell.line, 0, name}, quote(name) + " twice", "each heading once", {}});
    }
    table.names.push_back(name);
  }
  return faults;
}

}  // namespace

Result<evidence::DataTable> read_data_table(const std::string& file, std::string_view bytes) {
  const Result<DecodedText> decoded = decode_text(file, bytes);
  if (!decoded) return decoded.faults();
  const auto width = [](const people::Sheet& sheet) {
    return sheet.rows.empty() ? 0 : static_cast<int>(sheet.rows.front().cells.size());
  };
  SeparatedValues values = read_best_separated(file, decoded.value().text, width);
  if (!values.faults.empty()) return values.faults;
  people::Sheet& sheet = values.sheet;
  sheet.rows.erase(std::remove_if(sheet.rows.begin(), sheet.rows.end(), is_blank), sheet.rows.end());
  if (sheet.rows.empty())
    return Fault{FaultCode::kMissing, {file, 0, 0, {}}, "an empty file", "a row of headings and rows below it", {}};
  evidence::DataTable table;
  table.file = file;
  Faults faults = take_headings(sheet, table);
  table.column.resize(table.names.size());
  for (std::size_t i = 1; i < sheet.rows.size(); ++i) {
    people::SheetRow& row = sheet.rows[i];
    if (row.cells.size() > table.names.size()) {
      faults.push_back({FaultCode::kSyntax,
                        {file, row.line, 0, {}},
                        std::to_string(row.cells.size()) + " cells",
                        "at most " + std::to_string(table.names.size()) + ", as many as headings",
                        "a cell that contains the separator needs quotation marks"});
      if (faults.size() > people::kMostFaultsListed) break;
      continue;
    }
    table.lines.push_back(row.line);
    for (std::size_t c = 0; c < table.names.size(); ++c)
      table.column[c].push_back(c < row.cells.size() ? people::tidy(row.cells[c].text) : std::string());
  }
  if (faults.empty() && table.lines.empty())
    return Fault{FaultCode::kMissing, {file, 0, 0, {}}, "headings only", "rows below the headings", {}};
  if (!faults.empty()) return faults;
  return table;
}

}  // namespace lanework::read
