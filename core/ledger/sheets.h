// What happened as the spreadsheets that blocks and reports read: sessions for the planner (docs/formats/sessions.md),
// hours and injuries for evidence (docs/formats/records.md). So what phones and the desk enter reaches the next plan
// and the season's report by the same readers, and with the same checks, as a club's own sheets.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/ledger/fold.h"

namespace lanework::ledger {

// A line of a sheet: every cell in quotes, and one that a spreadsheet would take for a formula with a mark before it.
std::string sheet_row(const std::vector<std::string>& cells);

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

// What evidence counts goes by the consent to statistics (core/ledger/consent.h); of nobody it says whom it left out.
struct EvidenceSheet {
  std::string text;
  std::int64_t left_out = 0;         // injuries; of hours: places at a session that somebody had by name
  std::int64_t left_out_people = 0;  // whose injuries those are
  std::int64_t people = 0;           // who stand in it by their ids
};

// A row a session that the calendar has, or that somebody wrapped up, counted, or confirmed the hours of: hours are the
// calendar times who was there, with exceptions. A session of which nobody said anything counts as held by the squad's
// usual players; one that was missed, nobody was counted at and nobody confirmed is no row, since there was no session.
// Minutes stand only where they were confirmed, since a wrap-up knows those of the warm-up alone; else the squad's
// usual ones count, and the report says how many hours rest on that. calendar: of any days.
// Of those counted by name, whoever gave no consent is taken off the number; where nobody was named there is nobody to
// take off.
EvidenceSheet hours_sheet(const State& state, const SheetDays& days, const std::vector<CalendarSession>& calendar = {});

// A row an injury that was opened, by the player's id.
EvidenceSheet injuries_sheet(const State& state, const SheetDays& days);

}  // namespace lanework::ledger
