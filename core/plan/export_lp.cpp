#include "core/plan/export_lp.h"

namespace lanework::plan {
namespace {

constexpr std::size_t kTermsALine = 8;

void write_terms(std::string& out, const ExportTable& table, const std::vector<Term>& terms) {
  for (std::size_t i = 0; i < terms.size(); ++i) {
    if (i > 0 && i % kTermsALine == 0) out += "\n ";
    const std::int64_t size = terms[i].coefficient < 0 ? -terms[i].coefficient : terms[i].coefficient;
    out += terms[i].coefficient < 0 ? " - " : " + ";
    out += std::to_string(size) + ' ' + table.columns[static_cast<std::size_t>(terms[i].column)].name;
  }
}

const char* sign(Sense sense) {
  switch (sense) {
    case Sense::kAtMost:
      return " <= ";
    case Sense::kAtLeast:
      return " >= ";
    case Sense::kEqual:
      return " = ";
  }
  return "";
}

}  // namespace

std::string lp_text(const ExportTable& table, int level, const Objective& optimum) {
  std::string out = "\\ session, level " + std::to_string(level + 1) + "\nMinimize\n objective:";
  const std::vector<Term>& objective = table.objectives[static_cast<std::size_t>(level)];
  write_terms(out, table, objective.empty() ? std::vector<Term>{{0, 0}} : objective);
  out += "\nSubject To\n";
  for (const ExportRow& row : level_rows(table, level, optimum)) {
    out += ' ' + row.name + ':';
    write_terms(out, table, row.terms);
    out += sign(row.sense) + std::to_string(row.bound) + '\n';
  }
  out += "Bounds\n";
  for (const ExportColumn& column : table.columns) {
    if (column.integer || column.upper == kNoUpper) continue;
    if (column.lower == column.upper) {
      out += ' ' + column.name + " = " + std::to_string(column.upper) + '\n';
    } else {
      out += " 0 <= " + column.name + " <= " + std::to_string(column.upper) + '\n';
    }
  }
  out += "Binary\n";
  for (const ExportColumn& column : table.columns) {
    if (column.integer) out += ' ' + column.name + '\n';
  }
  return out + "End\n";
}

LevelTexts export_levels_lp(const Problem& problem, const Objective& optimum) {
  const ExportTable table = export_table(problem);
  LevelTexts out;
  for (int level = 0; level < kLevels; ++level) {
    out.emplace_back(".level" + std::to_string(level + 1) + ".lp", lp_text(table, level, optimum));
  }
  return out;
}

}  // namespace lanework::plan
