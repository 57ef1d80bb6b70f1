#include <set>
#include <utility>

#include "core/records/sheets.h"

namespace lanework::records {

void read_players(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads,
                  PlayerNames& players, ReadSeason& out) {
  using Column = PlayerColumn;
  SheetReader reader(SheetKind::kPlayers, sheet, reading, out.faults);
  reader.tell_date_order(Column::kJoined, Column::kLeft);
  const std::vector<std::optional<Date>> joined = reader.dates(Column::kJoined);
  const std::vector<std::optional<Date>> left = reader.dates(Column::kLeft);
  std::set<std::pair<std::string, std::uint32_t>> seen;
  out.places.players.file = sheet.file;
  for (std::size_t i = 0; i < reader.rows().size(); ++i) {
    const SheetRow& row = *reader.rows()[i];
    const std::size_t before = reader.faults_so_far();
    PlayerRecord player;
    player.player = players.spelled(reader.text(row, Column::kPlayer));
    if (player.player.empty()) reader.fault(FaultCode::kMissing, row, Column::kPlayer, "a player's pseudonym");
    const std::optional<std::uint32_t> squad = reader.squad(row, Column::kSquad, squads);
    player.joined = joined[i];
    player.left = left[i];
    if (player.joined && player.left && *player.left < *player.joined) {
      reader.fault(FaultCode::kContradiction, row, Column::kLeft,
                   "a day not before joining on " + to_iso(*player.joined));
    }
    if (squad && !player.player.empty() && !seen.emplace(player.player, *squad).second)
      reader.fault(FaultCode::kDuplicate, row, Column::kPlayer, "one row a player and squad");
    const bool dates_read = (player.joined || reader.text(row, Column::kJoined).empty()) &&
                            (player.left || reader.text(row, Column::kLeft).empty());
    if (reader.faults_so_far() != before || !dates_read) continue;
    player.squad = *squad;
    out.season.players.push_back(std::move(player));
    out.places.players.lines.push_back(row.line);
  }
}

}  // namespace lanework::records
