#include "app/cli/print_check.h"

#include "app/cli/columns.h"

namespace lanework::cli {

std::string check_text(const check::Report& report) {
  if (report.infeasible) {
    return report.ok() ? "The plan says that nothing fits, and no session was found that does.\n"
                       : "The plan says that nothing fits, but: " + check::to_line(report.violations[0]) + "\n";
  }
  std::vector<std::vector<std::string>> rows;
  for (const check::ItemReport& item : report.items) {
    rows.push_back({minutes_seconds(item.starts_seconds), item.name, item.rung_words, item.dose_words,
                    minutes_seconds(item.takes_seconds)});
  }
  std::string out = in_columns(rows, "  ");
  out += "\nTakes " + minutes_seconds(report.planned_seconds) + " min, nine nights in ten " +
         minutes_seconds(report.planned_seconds + report.margin_seconds) + " min of " +
         minutes_seconds(report.slot_seconds) + " min, with " + std::to_string(report.turnout) + " players.\n";
  for (const check::LoadReport& load : report.loads) {
    out += "  " + load.load + " " + std::to_string(load.planned) + " of at most " + std::to_string(load.ceiling) + "\n";
  }
  out += "Uncovered " + std::to_string(report.levels.uncovered) + ", shortfall " +
         std::to_string(report.levels.shortfall) + ", changes " + std::to_string(report.levels.changes) +
         ", preference " + std::to_string(report.levels.preference) + ".\n";
  if (report.ok()) return out + "Every rule is kept.\n";
  out += "Broken:\n";
  for (const check::Violation& violation : report.violations) out += "  " + check::to_line(violation) + "\n";
  return out;
}

}  // namespace lanework::cli
