// A table of squads with their events and hours, as several calculators take it.
#pragma once

#include <string>

#include "app/cli/evidence/answer.h"
#include "app/cli/evidence/table_file.h"

namespace lanework::cli {

struct SquadCountFlags {
  EvidenceFlags common;
  std::string data;
  NamedCountColumns columns{"squad"};
};
void add_squad_count_flags(CLI::App& command, SquadCountFlags& flags);

struct SquadCounts {
  NamedCounts named;
  double events = 0;
  double hours = 0;
  [[nodiscard]] double per_hour() const { return events / hours; }
};
Result<SquadCounts> read_squad_counts(const SquadCountFlags& flags);

}  // namespace lanework::cli
