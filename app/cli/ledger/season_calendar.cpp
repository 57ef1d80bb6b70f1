#include "app/cli/ledger/season_calendar.h"

#include <algorithm>

#include "app/cli/today.h"
#include "app/read/club_folder.h"
#include "core/club/calendar.h"

namespace lanework::cli {

namespace {

constexpr int kDaysBeside = 31;

std::vector<ledger::CalendarSession> sessions_of(const club::Club& club, const ledger::SheetDays& days) {
  constexpr int kDays = 7;
  constexpr int kMondayOfEpoch = 3;  // 1 January 1970 was a Thursday
  const int from = days.from.days_since_epoch;
  const int back = ((from + kMondayOfEpoch) % kDays + kDays) % kDays;
  const Date monday{from - back};
  const Date last = std::min(days.until, today());
  std::vector<ledger::CalendarSession> out;
  if (last < monday) return out;
  const int weeks = (last.days_since_epoch - monday.days_since_epoch) / kDays + 1;
  for (const club::ClubSquad& squad : club.squads) {
    for (const club::PlannedSlot& slot : club::expand(club, squad, monday, weeks).slots) {
      if (slot.date < days.from || last < slot.date) continue;
      out.push_back({{squad.id, to_iso(slot.date), to_text(slot.start)}, slot.match_day});
    }
  }
  return out;
}

}  // namespace

Result<std::vector<ledger::CalendarSession>> season_calendar(const std::string& folder, const std::string& catalogue,
                                                             const ledger::SheetDays& days) {
  if (folder.empty()) return std::vector<ledger::CalendarSession>();
  const read::ClubFolder read = read::read_club_folder(folder, catalogue);
  if (!read.faults.empty()) return read.faults;
  return sessions_of(read.club, days);
}

Result<std::vector<ledger::CalendarSession>> planned_season(const std::string& folder, const std::string& catalogue,
                                                            const ledger::SheetDays& days) {
  const read::ClubFolder read = read::read_club_folder(folder, catalogue);
  if (!read.faults.empty()) return read.faults;
  const club::Settings& season = read.club.settings;
  if (days_between(days.from, season.season_from) > kDaysBeside ||
      days_between(season.season_to, days.until) > kDaysBeside) {
    return Fault{FaultCode::kOutOfRange,
                 {folder, 0, 0, "season"},
                 to_iso(season.season_from) + " to " + to_iso(season.season_to),
                 "a season that holds " + to_iso(days.from) + " to " + to_iso(days.until),
                 {}};
  }
  return sessions_of(read.club, days);
}

}  // namespace lanework::cli
