#include "core/records/week_hours.h"

namespace lanework::records {

WeekTable hours_by_week(const Season& season) {
  WeekTable table(season.squads.size(), season.period);
  for (const Exposure& exposure : season.exposures) {
    const auto week = static_cast<std::size_t>(week_of(season.period, exposure.date));
    WeekHours& cell = table.at(exposure.squad, week, exposure.setting);
    cell.hours += exposure.hours;
    ++(exposure.player.empty() ? cell.sessions : cell.player_sessions);
    ++cell.warm_ups[exposure.warm_up ? static_cast<std::size_t>(*exposure.warm_up) : kWarmUps];
    ++table.rows;
  }
  return table;
}

}  // namespace lanework::records
