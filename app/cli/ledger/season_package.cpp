#include "app/cli/ledger/season_package.h"

#include "app/read/table_package.h"
#include "app/read/zip_archive.h"

namespace lanework::cli {
namespace {

using read::PackagedTable;

constexpr const char* kSquadId = "Id of the squad.";

PackagedTable sessions_table() {
  return {"sessions",
          "A row a session that somebody wrapped up.",
          {{"squad", "string", kSquadId, true},
           {"date", "date", "Day of the session.", true},
           {"start", "time", "Start, local time.", true, "%H:%M"},
           {"happened", "string", "held, cut short, missed.", true},
           {"minutes", "integer", "Minutes of the warm-up, where somebody said."},
           {"did it", "string", "How many of those there did it: most, half, few, nobody."},
           {"left out", "string", "Ids of drills that were skipped, ';' between them."},
           {"note", "string", "As it was typed."}}};
}

PackagedTable hours_table() {
  return {"hours",
          "A row a session: training or match, how long, how many were there. What is empty was not said: then the "
          "squad's usual minutes and players count.",
          {{"squad", "string", kSquadId, true},
           {"date", "date", "Day of the session.", true},
           {"setting", "string", "training, match.", true},
           {"minutes", "integer", "Minutes that somebody confirmed."},
           {"players", "integer", "Players who were there, without those whose families do not agree to statistics."},
           {"warm-up", "string", "How many did the warm-up: most, half, few, nobody, no."},
           {"warm-up minutes", "integer", "Minutes of the warm-up."},
           {"left out", "string", "Ids of drills that were skipped, ';' between them."},
           {"needing help", "string", "Ids of drills that a coach asked help with, ';' between them."},
           {"confirmed", "string", "yes: somebody looked at this row's hours."}}};
}

PackagedTable injuries_table() {
  return {"injuries",
          "A row an injury, by the player's id; only of players whose families agree to statistics. Terms are those of "
          "the 2020 consensus on recording and reporting of injuries in sport.",
          {{"squad", "string", kSquadId, true},
           {"player", "string", "Id of the player: a pseudonym; the club's lists say whose.", true},
           {"date", "date", "Day of onset.", true},
           {"setting", "string", "training, match."},
           {"onset", "string", "How it began."},
           {"contact", "string", "With or without contact."},
           {"region", "string", "Region of the body."},
           {"tissue", "string", "Tissue, where somebody who may say so said it."},
           {"side", "string", "left, right, both."},
           {"activity", "string", "What the player did."},
           {"recurrence", "string", "New, or again."},
           {"loss began", "date", "First day the player could not take part, where it came later than the onset."},
           {"returned", "date", "Able to take part in full; empty: not yet."},
           {"note", "string", "As it was typed."}}};
}

PackagedTable squads_table() {
  return {"squads",
          "A row a squad.",
          {{"squad", "string", kSquadId, true},
           {"name", "string", "Name of the squad."},
           {"players", "integer", "Players on its list now."},
           {"training minutes", "integer", "How long a training usually is."},
           {"match minutes", "integer", "How long a match usually is."}}};
}

}  // namespace

std::string season_descriptor(const std::string& club, const ledger::SheetDays& days, const std::string& left_out) {
  const std::string title = club + ": " + to_iso(days.from) + " to " + to_iso(days.until);
  const std::string said = "In a cell that a spreadsheet would take for a formula an apostrophe comes first.";
  return read::package_descriptor({club,
                                   "season",
                                   title,
                                   left_out.empty() ? said : said + " " + left_out,
                                   {sessions_table(), hours_table(), injuries_table(), squads_table()}});
}

Result<std::string> season_package(const std::string& club, const ledger::SheetDays& days, const std::string& left_out,
                                   const SeasonSheets& sheets) {
  std::vector<read::ArchivedFile> files = {{read::kPackageName, season_descriptor(club, days, left_out)}};
  for (const auto& [name, text] : sheets.files) files.push_back({name, text});
  return read::zip_of(files);
}

}  // namespace lanework::cli
