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
  LoadSums fixed;    // of match days, and of what is over
  std::int64_t fresh = 0;
  std::int64_t fresh_before = 0;                // of what is over
  std::map<std::string, std::int64_t> credits;  // by family, match days and what is over counted in
  std::map<std::string, std::int64_t> work_ms;
  bool has_session = false;  // to come, other than on match days
};
std::vector<WeekSums> week_sums(const SquadLedger& ledger, int weeks);

// Thousandths and millimetres, of the age band of the youngest of any evening.
LoadSums week_ceilings(const Matter& matter, const SquadLedger& ledger);

// Quarters of the family's dose that each week should give: what weeks that are over owe is asked of the two after
// them.
std::vector<std::int64_t> week_targets(const Family& family, const SquadLedger& ledger, int weeks);

}  // namespace lanework::check
