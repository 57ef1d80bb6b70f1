#include "core/records/read_season.h"

#include <algorithm>
#include <map>

#include "core/records/sheets.h"

namespace lanework::records {

Question outside_period(const people::Sheet& sheet, const SheetRow& row, Date day, const SeasonReading& reading) {
  return {QuestionKind::kOutsidePeriod,
          {sheet.file, row.line, 0, {}},
          Speaker(reading.language)
              .say({"{} is not in the period {} to {}: the row is left out",
                    "{} no está en el periodo de {} a {}: la fila no cuenta"},
                   to_iso(day), to_iso(reading.period.first), to_iso(reading.period.last))};
}

namespace {

Faults by_file_and_line(Faults faults) {
  std::map<std::string, int> order;
  for (const Fault& fault : faults) order.emplace(fault.place.file, static_cast<int>(order.size()));
  std::stable_sort(faults.begin(), faults.end(), [&](const Fault& a, const Fault& b) {
    return std::pair(order[a.place.file], a.place.line) < std::pair(order[b.place.file], b.place.line);
  });
  return faults;
}

}  // namespace

ReadSeason read_season(const SeasonSheets& sheets, const SeasonReading& reading) {
  ReadSeason out;
  out.season.period = reading.period;
  read_squads(sheets.squads, reading, out);
  if (out.season.squads.empty()) return out;  // the other sheets can name nothing
  const SquadNames squads(out.season.squads, reading.forms);
  PlayerNames players(reading.forms);
  if (sheets.players) read_players(*sheets.players, reading, squads, players, out);
  read_hours(sheets.hours, reading, squads, players, out);
  read_injuries(sheets.injuries, reading, squads, players, out);
  out.faults = by_file_and_line(std::move(out.faults));
  return out;
}

Result<std::vector<SquadRecord>> read_squad_sheet(const people::Sheet& sheet, const SeasonReading& reading) {
  ReadSeason out;
  read_squads(sheet, reading, out);
  if (!out.faults.empty()) return std::move(out.faults);
  return std::move(out.season.squads);
}

Result<Season> season_of(ReadSeason read) {
  if (!read.faults.empty()) return std::move(read.faults);
  return std::move(read.season);
}

int count_known_headings(const people::Sheet& sheet, SheetKind kind, const Mapping& mapping,
                         const people::TextForms& forms) {
  return people::count_known(sheet, known_columns(kind, mapping.of(kind)), forms);
}

}  // namespace lanework::records
