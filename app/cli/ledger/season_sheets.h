// A season of the ledger as the sheets that reports read (docs/formats/records.md), and blocks the sessions of.
#pragma once

#include <map>
#include <string>

#include "app/cli/ledger/ledger_folder.h"
#include "core/ledger/fold.h"
#include "core/ledger/sheets.h"

namespace lanework::cli {

struct SeasonSheetsAsked {
  ledger::SheetDays days;
  int training_minutes = 0;  // usual ones, where nobody confirmed them; 0: not stated
  int match_minutes = 0;
  std::string calendar;  // a club's folder, whose sessions count as held where nobody said otherwise; empty: none
};

void add_usual_hours(CLI::App& command, SeasonSheetsAsked& asked);

// By the names of files: sessions.csv, hours.csv, injuries.csv, squads.csv. Faults: the store, the club's folder.
Result<std::map<std::string, std::string>> season_sheets(const LedgerFlags& flags, const SeasonSheetsAsked& asked,
                                                         const ledger::State& state);

}  // namespace lanework::cli
