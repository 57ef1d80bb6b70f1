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

}  // namespace lanework::cli
