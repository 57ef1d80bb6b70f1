#include "app/cli/ledger/season_calendar.h"

#include <algorithm>

#include "app/cli/today.h"
#include "app/read/club_folder.h"
#include "core/club/calendar.h"

namespace lanework::cli {

Result<std::vector<ledger::CalendarSession>> season_calendar(const std::string& folder_name,
                                                             const std::string& catalogue,
                                                             const ledger::SheetDays& days) {
  std::vector<ledger::CalendarSession> out;
  if (folder_name.empty()) return out;
  const read::ClubFolder folder = read::read_club_folder(folder_name, catalogue);
  if (!folder.faults.empty()) return folder.faults;
  constexpr int kDays = 7;
  constexpr int kMondayOfEpoch = 3;  // 1 January 1970 was a Thursday
  const int from = days.from.days_since_epoch;
  const int back = ((from + kMondayOfEpoch) % kDays + kDays) % kDays;
  const Date monday{from - back};
  const Date last = std::min(days.until, today());
  if (last < monday) return out;
  const int weeks = (last.days_since_epoch - monday.days_since_epoch) / kDays + 1;
  for (const club::ClubSquad& squad : folder.club.squads) {
    for (const club::PlannedSlot& slot : club::expand(folder.club, squad, monday, weeks).slots) {
      if (slot.date < days.from || last < slot.date) continue;
      out.push_back({{squad.id, to_iso(slot.date), to_text(slot.start)}, slot.match_day});
    }
  }
  return out;
}

}  // namespace lanework::cli
