// The sessions that a club's folder has of a season's days.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/ledger/sheets.h"

namespace lanework::cli {

// Of all squads, up to today: what is to come was not held yet. folder: empty, none. Faults: of the folder.
Result<std::vector<ledger::CalendarSession>> season_calendar(const std::string& folder, const std::string& catalogue,
                                                             const ledger::SheetDays& days);

// The same, where the club's season holds the days: a month more at either end does no harm. Faults, too: it does not,
// so that of some of them nobody could say what was planned.
Result<std::vector<ledger::CalendarSession>> planned_season(const std::string& folder, const std::string& catalogue,
                                                            const ledger::SheetDays& days);

}  // namespace lanework::cli
