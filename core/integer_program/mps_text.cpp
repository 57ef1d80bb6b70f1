#include "core/integer_program/mps_text.h"

#include <array>

namespace lanework::integer_program {
namespace {

constexpr std::array<const char*, 3> kLetters = {" L ", " G ", " E "};  // in the order of Sense

// The terms of each column, objective first: MPS is written by columns.
struct Entry {
  std::string row;
  std::int64_t coefficient;
};

std::vector<std::vector<Entry>> by_column(const Program& program) {
  std::vector<std::vector<Entry>> entries(program.columns.size());
  const auto add = [&](const std::string& row, const std::vector<Term>& terms) {
    for (const Term& term : terms) entries[static_cast<std::size_t>(term.column)].push_back({row, term.coefficient});
  };
  add("objective", program.objective);
  for (const Row& row : program.rows) add(row.name, row.terms);
  return entries;
}

void marker(std::string& out, int number, const char* kind) {
  out += " marker" + std::to_string(number) + " 'MARKER' '" + kind + "'\n";
}

void write_columns(std::string& out, const Program& program) {
  const std::vector<std::vector<Entry>> entries = by_column(program);
  out += "COLUMNS\n";
  bool integer = false;
  int markers = 0;
  for (std::size_t c = 0; c < program.columns.size(); ++c) {
    if (program.columns[c].integer != integer) {
      integer = !integer;
      marker(out, markers++, integer ? "INTORG" : "INTEND");
    }
    for (const Entry& entry : entries[c]) {
      out += ' ' + program.columns[c].name + ' ' + entry.row + ' ' + std::to_string(entry.coefficient) + '\n';
    }
    // A column that stands in no row of this level must still be known before it is bounded.
    if (entries[c].empty()) out += ' ' + program.columns[c].name + " objective 0\n";
  }
  if (integer) marker(out, markers, "INTEND");
}

void write_bounds(std::string& out, const Program& program) {
  out += "BOUNDS\n";
  for (const Column& column : program.columns) {
    if (column.upper == kNoUpper) continue;
    const char* kind = column.lower == column.upper ? " FX bounds " : " UP bounds ";
    out += kind + column.name + ' ' + std::to_string(column.upper) + '\n';
  }
}

}  // namespace

std::string mps_text(const Program& program) {
  std::string out = "NAME " + program.name + "\nROWS\n N objective\n";
  for (const Row& row : program.rows) out += kLetters[static_cast<std::size_t>(row.sense)] + row.name + '\n';
  write_columns(out, program);
  out += "RHS\n";
  for (const Row& row : program.rows) {
    if (row.bound != 0) out += " rhs " + row.name + ' ' + std::to_string(row.bound) + '\n';
  }
  write_bounds(out, program);
  return out + "ENDATA\n";
}

}  // namespace lanework::integer_program
