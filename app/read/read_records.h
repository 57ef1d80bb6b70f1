// The files of a season to its records: bytes, separators and quoted cells as a roster's. docs/formats/records.md says
// what is read.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/records/mapping.h"
#include "core/records/read_season.h"
#include "core/records/terms.h"
#include "core/records/week_hours.h"
#include "core/records/write_season.h"

namespace lanework::read {

struct NamedText {
  std::string file;
  std::string bytes;
};
struct RecordFiles {
  NamedText squads;
  NamedText hours;
  NamedText injuries;
  std::optional<NamedText> players;
};

inline constexpr std::size_t kMostRecordBytes = 16U << 20U;  // of one file

// record_terms.toml of the first catalogue folder.
Result<records::Terms> read_record_terms(const std::string& catalogue_folder);
// A mapping file; without one, Mapping{} reads our own headings and words.
Result<records::Mapping> read_record_mapping(const std::string& path, const records::Terms& terms);

// The files of a folder under their canonical names: squads.csv, hours.csv, injuries.csv and, where it is there,
// players.csv.
Result<RecordFiles> record_files_in(const std::string& folder);

// Every fault of every file is collected. Faults in the bytes of a file, or in its quotation marks, come alone.
// language: of the questions.
records::ReadSeason read_records(const RecordFiles& files, const records::Terms& terms, const records::Mapping& mapping,
                                 const records::Period& period, Language language = Language::kEnglish);

// Canonical squads.csv alone, with the faults of its rows: what the sums of hours need.
Result<std::vector<records::SquadRecord>> read_squad_records(const NamedText& squads, const records::Terms& terms,
                                                             const records::Mapping& mapping,
                                                             const records::Period& period);

// A canonical file of hours of any length, read in pieces.
Result<records::WeekTable> sum_hours_file(const std::string& path, const std::vector<records::SquadRecord>& squads,
                                          const records::Period& period);

// Writes squads.csv, hours.csv, injuries.csv and players.csv into a folder that is there. All are tried; faults of
// those that failed.
Faults write_canonical_files(const std::string& folder, const records::CanonicalFiles& files);

}  // namespace lanework::read
