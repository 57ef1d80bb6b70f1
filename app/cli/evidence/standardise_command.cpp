#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/command.h"
#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/evidence_commands.h"
#include "app/cli/evidence/table_file.h"
#include "core/evidence/standardised.h"

namespace lanework::cli {
namespace {

struct StandardiseFlags {
  EvidenceFlags common;
  std::string data;
};

Result<std::vector<evidence::StandardPart>> read_parts(const std::string& path) {
  const auto table = table_file(path);
  if (!table) return table.faults();
  const auto events = events_column(table.value(), "events");
  if (!events) return events.faults();
  const auto hours = hours_column(table.value(), "hours", false);
  if (!hours) return hours.faults();
  const auto standard = hours_column(table.value(), "standard_hours", true);
  if (!standard) return standard.faults();
  std::vector<evidence::StandardPart> parts;
  double sum = 0;
  for (std::size_t row = 0; row < table.value().rows(); ++row) {
    parts.push_back({events.value()[row], hours.value()[row], standard.value()[row]});
    sum += standard.value()[row];
  }
  if (!(sum > 0))
    return Fault{FaultCode::kMissing, {path, 0, 0, "standard_hours"}, "none above 0", "hours of the standard", {}};
  return parts;
}

Result<EvidenceAnswer> standardise(const StandardiseFlags& flags) {
  const auto parts = read_parts(flags.data);
  if (!parts) return parts.faults();
  const double level = flags.common.level();
  const evidence::Standardised found = evidence::standardised_rate(parts.value(), level);
  EvidenceAnswer out;
  out.node = evidence_node("standardise", level);
  out.node.set("crude_per_1000_h", Node::make_real(1000 * found.crude));
  out.node.set("per_1000_h", Node::make_real(1000 * found.rate));
  out.node.set("limits_per_1000_h", interval_node(found.limits, 1000));
  out.text = "As counted: " + per_1000_hours(found.crude) +
             ".\nWith the standard's hours: " + per_1000_hours(found.rate) + ", " + level_words(level) + " limits " +
             limits_words(found.limits, 1000) + " (gamma).\n";
  return out;
}

}  // namespace

void add_standardise_command(CLI::App& evidence, int& exit_status) {
  CLI::App* command =
      evidence.add_subcommand("standardise", "one rate as if ages or settings had the hours of a standard");
  const auto flags = std::make_shared<StandardiseFlags>();
  command->add_option("--data", flags->data, "a table with events, hours and standard_hours, one row a part")
      ->required();
  add_evidence_flags(*command, flags->common);
  command->callback([flags, &exit_status] { exit_status = show(standardise(*flags), flags->common.json); });
}

}  // namespace lanework::cli
