// Weeks of the season for which a squad has a row of hours, and those for which it has none.
#pragma once

#include <vector>

#include "core/records/season.h"

namespace lanework::records {

struct SquadWeeks {
  int with_rows = 0;
  int expected = 0;           // weeks that touch the period, up to the last day that is known
  std::vector<Date> without;  // Mondays
};

// One a squad.
std::vector<SquadWeeks> weeks_with_rows(const Season& season);

}  // namespace lanework::records
