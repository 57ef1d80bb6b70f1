// What happened as the spreadsheets that blocks and reports read: sessions for the planner (docs/formats/sessions.md),
// hours and injuries for evidence (docs/formats/records.md). So what phones and the desk enter reaches the next plan
// and the season's report by the same readers, and with the same checks, as a club's own sheets.
#pragma once

#include <string>
#include <vector>

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

// A session that the club's calendar has.
struct CalendarSession {
  SessionKey key;
  bool match = false;
};

// A row a session that the calendar has, or that somebody wrapped up, counted, or confirmed the hours of: hours are the
// calendar times who was there, with exceptions. A session of which nobody said anything counts as held by the squad's
// usual players; one that was missed, nobody was counted at and nobody confirmed is no row, since there was no session.
// Minutes stand only where they were confirmed, since a wrap-up knows those of the warm-up alone; else the squad's
// usual ones count, and the report says how many hours rest on that. calendar: of any days.
std::string hours_sheet(const State& state, const SheetDays& days, const std::vector<CalendarSession>& calendar = {});

// A row an injury that was opened, by the player's id.
std::string injuries_sheet(const State& state, const SheetDays& days);

}  // namespace lanework::ledger
