#include "app/cli/evidence/squad_counts.h"

#include <CLI/CLI.hpp>

namespace lanework::cli {

void add_squad_count_flags(CLI::App& command, SquadCountFlags& flags) {
  command.add_option("--data", flags.data, "a table, one row a squad or several")->required();
  command.add_option("--squad", flags.columns.name, "the column of squads");
  command.add_option("--events", flags.columns.events, "the column of events");
  command.add_option("--hours", flags.columns.hours, "the column of player-hours");
  add_evidence_flags(command, flags.common);
}

Result<SquadCounts> read_squad_counts(const SquadCountFlags& flags) {
  const auto table = table_file(flags.data);
  if (!table) return table.faults();
  auto named = named_counts(table.value(), flags.columns);
  if (!named) return named.faults();
  SquadCounts out{std::move(named).value()};
  for (const evidence::Exposed& counts : out.named.counts) {
    out.events += static_cast<double>(counts.events);
    out.hours += counts.hours;
  }
  return out;
}

}  // namespace lanework::cli
