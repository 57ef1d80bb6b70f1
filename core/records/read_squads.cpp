#include <set>

#include "core/people/roster_headings.h"
#include "core/records/hours.h"
#include "core/records/sheets.h"

namespace lanework::records {
namespace {

using Column = SquadColumn;

SquadRecord read_row(SheetReader& sheet, const SheetRow& row) {
  SquadRecord out;
  out.id = sheet.text(row, Column::kId);
  out.name = sheet.text(row, Column::kName);
  out.club = sheet.text(row, Column::kClub);
  out.age_band = sheet.text(row, Column::kAgeBand);
  out.sex = sheet.term<Sex>(row, Column::kSex);
  out.players = sheet.whole(row, Column::kPlayers, 1, kMostSessionPlayers);
  out.training_minutes = sheet.minutes(row, Column::kTrainingMinutes, 1, kMostUsualMinutes);
  out.match_minutes = sheet.minutes(row, Column::kMatchMinutes, 1, kMostUsualMinutes);
  out.on_the_field = sheet.whole(row, Column::kOnTheField, 1, kMostSessionPlayers);
  return out;
}

}  // namespace

void read_squads(const people::Sheet& sheet, const SeasonReading& reading, ReadSeason& out) {
  SheetReader reader(SheetKind::kSquads, sheet, reading, out.faults);
  reader.tell_date_order(Column::kTaught);
  const std::vector<std::optional<Date>> taught = reader.dates(Column::kTaught);
  std::set<std::string> seen;
  out.places.squads.file = sheet.file;
  for (std::size_t i = 0; i < reader.rows().size(); ++i) {
    const SheetRow& row = *reader.rows()[i];
    SquadRecord squad = read_row(reader, row);
    squad.taught = taught[i];
    const std::string words = people::plain_words(squad.id, reading.forms);
    if (words.empty()) {
      reader.fault(FaultCode::kMissing, row, Column::kId, "an id, with a letter or a digit");
      continue;
    }
    if (!seen.insert(words).second) {
      reader.fault(FaultCode::kDuplicate, row, Column::kId, "one row a squad");
      continue;
    }
    // Also where another cell is at fault: the rows that name it are not to blame.
    out.season.squads.push_back(std::move(squad));
    out.places.squads.lines.push_back(row.line);
  }
  if (out.season.squads.empty() && out.faults.empty())
    out.faults.push_back(people::row_fault(FaultCode::kMissing, sheet, 0, "no squad", "at least one row"));
}

}  // namespace lanework::records
