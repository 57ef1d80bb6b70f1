// Sums and ceilings of the weeks of a squad's block.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/check/squad_ledger.h"

namespace lanework::check {

struct WeekSums {
  LoadSums planned;  // of the block's own sessions
  LoadSums match_days;
  std::int64_t fresh = 0;
  std::map<std::string, std::int64_t> credits;  // by family, match days counted in
  std::map<std::string, std::int64_t> work_ms;
  bool has_session = false;  // other than on match days
};
std::vector<WeekSums> week_sums(const SquadLedger& ledger, int weeks);

// Thousandths and millimetres, of the age band of the youngest of any evening.
LoadSums week_ceilings(const Matter& matter, const SquadLedger& ledger);

// Quarters of the family's dose that a week should give.
std::int64_t week_target(const Family& family);

}  // namespace lanework::check
