// What happened as the spreadsheets that blocks and reports read: sessions for the planner (docs/formats/sessions.md),
// hours and injuries for evidence (docs/formats/records.md). So what phones and the desk enter reaches the next plan
// and the season's report by the same readers, and with the same checks, as a club's own sheets.
#pragma once

#include <string>

#include "core/base/date.h"
#include "core/ledger/fold.h"

namespace lanework::ledger {

// Sessions from one day to another, both included.
struct SheetDays {
  Date from;
  Date until;
};

// Those that somebody wrapped up: what nobody said anything about is no row, and so stays planned.
std::string sessions_sheet(const State& state, const SheetDays& days);

// A row a session that somebody wrapped up, counted, or confirmed the hours of. Minutes stand only where they were
// confirmed, since a wrap-up knows those of the warm-up alone; else the squad's usual ones count, and the report says
// how many hours rest on that.
std::string hours_sheet(const State& state, const SheetDays& days);

// A row an injury that was opened, by the player's id.
std::string injuries_sheet(const State& state, const SheetDays& days);

}  // namespace lanework::ledger
