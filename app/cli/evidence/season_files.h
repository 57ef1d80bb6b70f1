// A season's records as the command line names them: four files, their folder, or a ledger; a mapping; the period.
#pragma once

#include <optional>
#include <string>

#include "app/cli/ledger/season_sheets.h"
#include "app/read/read_records.h"
#include "core/findings/left_out.h"
#include "core/records/read_season.h"

namespace CLI {
class App;
}

namespace lanework::cli {

struct SeasonFlags {
  std::string records;  // a folder with the four files under their own names
  std::string squads;
  std::string hours;
  std::string injuries;
  std::string players;
  std::string mapping;
  std::string catalogue;
  std::string from;
  std::string to;
  std::string as_of;
  LedgerFlags ledger;  // in place of files
  SeasonSheetsAsked usual;
  Language language = Language::kEnglish;  // of what is asked about the records, and said of what is not in them
  std::string which;  // 'before-' of two seasons: part of the names of the flags that the period came by
};
void add_season_flags(CLI::App& command, SeasonFlags& flags);
// So that the season may lie in a ledger too.
void add_season_ledger(CLI::App& command, SeasonFlags& flags);

struct SeasonRead {
  records::Terms terms;
  records::ReadSeason read;                   // with its own faults
  std::optional<findings::LeftOut> left_out;  // of a ledger's; sheets do not say
  std::string what_went;  // a sentence, where entries of the ledger about some of the days went by their time
};
// Faults: of the command line, of the mapping, of files that cannot be read at all.
Result<SeasonRead> read_season_files(const SeasonFlags& flags);

}  // namespace lanework::cli
