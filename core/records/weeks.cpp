#include "core/records/weeks.h"

#include <algorithm>

namespace lanework::records {

std::vector<SquadWeeks> weeks_with_rows(const Season& season) {
  const Period& period = season.period;
  const int expected = week_of(period, std::min(period.last, period.as_of)) + 1;
  std::vector<std::vector<bool>> seen(season.squads.size(), std::vector<bool>(static_cast<std::size_t>(expected)));
  for (const Exposure& exposure : season.exposures)
    seen[exposure.squad][static_cast<std::size_t>(week_of(period, exposure.date))] = true;

  std::vector<SquadWeeks> out;
  for (const std::vector<bool>& weeks : seen) {
    SquadWeeks squad;
    squad.expected = expected;
    for (int week = 0; week < expected; ++week) {
      if (weeks[static_cast<std::size_t>(week)]) {
        ++squad.with_rows;
      } else {
        squad.without.push_back(monday_of(period, week));
      }
    }
    out.push_back(std::move(squad));
  }
  return out;
}

}  // namespace lanework::records
