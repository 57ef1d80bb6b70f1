#include "app/cli/evidence/season_report.h"

#include <utility>

#include "app/cli/evening_flags.h"
#include "app/cli/evidence/season_page/season_page.h"
#include "app/cli/evidence/spanish_drill_names.h"
#include "app/read/files.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::cli {
namespace {

Result<DrillNames> drill_names(const std::string& catalogue_asked, Language language) {
  const auto folder = catalogue_folder(catalogue_asked);
  if (!folder) return folder.faults();
  const auto documents = read::read_catalogue_folders(std::vector<std::string>{folder.value()});
  if (!documents) return documents.faults();
  const auto catalogue = catalogue::read_catalogue(documents.value());
  if (!catalogue) return catalogue.faults();
  DrillNames out;
  // What a club added has no Spanish name.
  if (language == Language::kSpanish) out = spanish_drill_names();
  for (const catalogue::Drill& drill : catalogue.value().drills) out.emplace(drill.id, drill.name);
  return out;
}

}  // namespace

Result<SeasonReport> season_report(const SeasonReportAsked& asked) {
  const auto season = read_season_files(asked.season);
  if (!season) return season.faults();
  const SeasonRead& read = season.value();
  if (!read.read.faults.empty()) return read.read.faults;
  findings::FindingsAsked wanted;
  const Language language = asked.season.language;
  wanted.language = language;
  wanted.level = asked.level_percent / 100;
  if (asked.usual_per_1000_h > 0) wanted.usual_rate = asked.usual_per_1000_h / 1000;
  const findings::SeasonFindings found = findings::find_all(read.read, read.terms, wanted);
  const auto drills = drill_names(asked.season.catalogue, language);
  if (!drills) return drills.faults();
  SeasonReport out;
  out.left_out = read.left_out ? findings::left_out_words(*read.left_out, asked.reader, language) : std::string();
  out.what_went = read.what_went;
  out.page = season_page({asked.club, &read.read.season, &read.terms, &found, asked.reader, &drills.value(),
                          out.left_out, !asked.season.ledger.folder.empty(), read.what_went});
  out.nothing = found.completeness.hours.count == 0 && read.read.season.injuries.empty();
  out.claims = findings::claims(found, asked.reader);
  return out;
}

}  // namespace lanework::cli
