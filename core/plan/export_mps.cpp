#include "core/plan/export_mps.h"

namespace lanework::plan {
namespace {

// The terms of each column, objective first: MPS is written by columns.
struct Entry {
  std::string row;
  std::int64_t coefficient;
};

std::vector<std::vector<Entry>> by_column(const ExportTable& table, int level, const std::vector<ExportRow>& rows) {
  std::vector<std::vector<Entry>> entries(table.columns.size());
  const auto add = [&](const std::string& row, const std::vector<Term>& terms) {
    for (const Term& term : terms) entries[static_cast<std::size_t>(term.column)].push_back({row, term.coefficient});
  };
  add("objective", table.objectives[static_cast<std::size_t>(level)]);
  for (const ExportRow& row : rows) add(row.name, row.terms);
  return entries;
}

char letter(Sense sense) {
  switch (sense) {
    case Sense::kAtMost:
      return 'L';
    case Sense::kAtLeast:
      return 'G';
    case Sense::kEqual:
      return 'E';
  }
  return 'N';
}

void marker(std::string& out, int number, const char* kind) {
  out += " marker" + std::to_string(number) + " 'MARKER' '" + kind + "'\n";
}

void write_columns(std::string& out, const ExportTable& table, const std::vector<std::vector<Entry>>& entries) {
  out += "COLUMNS\n";
  bool integer = false;
  int markers = 0;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (table.columns[c].integer != integer) {
      integer = !integer;
      marker(out, markers++, integer ? "INTORG" : "INTEND");
    }
    for (const Entry& entry : entries[c]) {
      out += ' ' + table.columns[c].name + ' ' + entry.row + ' ' + std::to_string(entry.coefficient) + '\n';
    }
    // A column that stands in no row of this level must still be known before it is bounded.
    if (entries[c].empty()) out += ' ' + table.columns[c].name + " objective 0\n";
  }
  if (integer) marker(out, markers, "INTEND");
}

void write_bounds(std::string& out, const ExportTable& table) {
  out += "BOUNDS\n";
  for (const ExportColumn& column : table.columns) {
    if (column.upper == kNoUpper) continue;
    const char* kind = column.lower == column.upper ? " FX bounds " : " UP bounds ";
    out += kind + column.name + ' ' + std::to_string(column.upper) + '\n';
  }
}

}  // namespace

std::string mps_text(const ExportTable& table, int level, const Objective& optimum) {
  const std::vector<ExportRow> rows = level_rows(table, level, optimum);
  std::string out = "NAME session_level" + std::to_string(level + 1) + "\nROWS\n N objective\n";
  for (const ExportRow& row : rows) out += std::string(" ") + letter(row.sense) + ' ' + row.name + '\n';
  write_columns(out, table, by_column(table, level, rows));
  out += "RHS\n";
  for (const ExportRow& row : rows) {
    if (row.bound != 0) out += " rhs " + row.name + ' ' + std::to_string(row.bound) + '\n';
  }
  write_bounds(out, table);
  return out + "ENDATA\n";
}

LevelTexts export_levels_mps(const Problem& problem, const Objective& optimum) {
  const ExportTable table = export_table(problem);
  LevelTexts out;
  for (int level = 0; level < kLevels; ++level) {
    out.emplace_back(".level" + std::to_string(level + 1) + ".mps", mps_text(table, level, optimum));
  }
  return out;
}

}  // namespace lanework::plan
