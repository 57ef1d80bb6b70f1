#include "core/integer_program/lp_text.h"

#include <array>

namespace lanework::integer_program {
namespace {

constexpr std::size_t kTermsALine = 8;
constexpr std::array<const char*, 3> kSigns = {" <= ", " >= ", " = "};  // in the order of Sense

void write_terms(std::string& out, const Program& program, const std::vector<Term>& terms) {
  for (std::size_t i = 0; i < terms.size(); ++i) {
    if (i > 0 && i % kTermsALine == 0) out += "\n ";
    const std::int64_t size = terms[i].coefficient < 0 ? -terms[i].coefficient : terms[i].coefficient;
    out += terms[i].coefficient < 0 ? " - " : " + ";
    out += std::to_string(size) + ' ' + program.columns[static_cast<std::size_t>(terms[i].column)].name;
  }
}

}  // namespace

std::string lp_text(const Program& program) {
  std::string out = "\\ " + program.title + "\nMinimize\n objective:";
  write_terms(out, program, program.objective.empty() ? std::vector<Term>{{0, 0}} : program.objective);
  out += "\nSubject To\n";
  for (const Row& row : program.rows) {
    out += ' ' + row.name + ':';
    write_terms(out, program, row.terms);
    out += kSigns[static_cast<std::size_t>(row.sense)] + std::to_string(row.bound) + '\n';
  }
  out += "Bounds\n";
  for (const Column& column : program.columns) {
    const bool fixed = column.lower == column.upper;
    if ((column.integer && !fixed) || column.upper == kNoUpper) continue;
    if (fixed) {
      out += ' ' + column.name + " = " + std::to_string(column.upper) + '\n';
    } else {
      out += " 0 <= " + column.name + " <= " + std::to_string(column.upper) + '\n';
    }
  }
  out += "Binary\n";
  for (const Column& column : program.columns) {
    // What is named here may be 0 or 1, whatever its bounds said.
    if (column.integer && column.lower != column.upper) out += ' ' + column.name + '\n';
  }
  return out + "End\n";
}

}  // namespace lanework::integer_program
