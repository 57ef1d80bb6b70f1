// Two arms of squads' hours compared like with like: within strata, such as an age band's matches, put together by
// Mantel and Haenszel. Limits twice: as if every injury happened by itself, and with squads counted as squads, each
// left out in turn. A squad may have hours in both arms.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/evidence/leave_one_out.h"
#include "core/evidence/stratified.h"
#include "core/records/season.h"

namespace lanework::findings {

// Squad and stratum: its injuries and hours in the one arm and in the other, either of which may be none.
using ArmCells = std::map<std::pair<std::string, std::string>, evidence::Stratum>;

struct StratifiedComparison {
  evidence::Exposed one;  // of all strata
  evidence::Exposed other;
  double crude = 0;        // ratio of all thrown together; not a number, or infinite, where an arm has no injury
  evidence::Tested exact;  // of the crude ratio; of no meaning without hours in both arms
  int strata = 0;          // with hours in both arms; what follows is of them alone
  double hours_outside = 0;
  std::int64_t events_outside = 0;
  int squads = 0;  // with hours in these strata
  // Empty where an arm has no injury in these strata.
  std::optional<evidence::Pooled> ratio;
  std::optional<evidence::Pooled> difference;  // per hour
  // Of the ratio and the difference; empty with fewer than four squads, or where one of them, left out, leaves nothing
  // to compare.
  std::optional<evidence::LeftOut> ratio_by_squads;
  std::optional<evidence::LeftOut> difference_by_squads;

  // What sentences go by: at each end the wider one's. REQUIRES: by_squads.
  [[nodiscard]] evidence::Interval ratio_limits() const;
  [[nodiscard]] evidence::Interval difference_limits() const;
};

StratifiedComparison compare_arms(const ArmCells& cells, double level);

// Injuries whose setting nobody knows have no hours of their own: strata by setting leave them out. Where they are more
// than a tenth (own judgement), strata are of age bands alone.
bool settings_are_known(const records::Season& season);
// 'U13', 'U13, match'.
std::string stratum_name(const records::SquadRecord& squad, std::optional<records::Setting> setting);

}  // namespace lanework::findings
