// A season of the ledger as the sheets that reports read (docs/formats/records.md), and blocks the sessions of.
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "app/cli/ledger/ledger_folder.h"
#include "core/base/two_languages.h"
#include "core/ledger/fold.h"
#include "core/ledger/sheets.h"

namespace lanework::cli {

struct SeasonSheetsAsked {
  ledger::SheetDays days;
  int training_minutes = 0;  // usual ones, where nobody confirmed them; 0: not stated
  int match_minutes = 0;
  std::string calendar;  // a club's folder, whose sessions count as held where nobody said otherwise; empty: none
  Language language = Language::kEnglish;  // of what_went
};

void add_usual_hours(CLI::App& command, SeasonSheetsAsked& asked);

struct SeasonSheets {
  std::map<std::string, std::string> files;  // by name: sessions.csv, hours.csv, injuries.csv, squads.csv
  std::int64_t injuries_left_out = 0;        // for want of consent to statistics
  std::int64_t people_left_out = 0;          // whose injuries those are
  std::int64_t places_left_out = 0;          // at sessions
  std::int64_t people = 0;                   // who stand in them by their ids
  std::string what_went;                     // a sentence, where entries about some of the days went by their time
};

// Faults: the store, the club's folder.
Result<SeasonSheets> season_sheets(const LedgerFlags& flags, const SeasonSheetsAsked& asked,
                                   const ledger::State& state);

}  // namespace lanework::cli
