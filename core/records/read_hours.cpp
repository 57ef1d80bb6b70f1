#include "core/records/hours.h"
#include "core/records/sheets.h"

namespace lanework::records {
namespace {

using Column = HoursColumn;

class HoursReader {
 public:
  HoursReader(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads, PlayerNames& players,
              ReadSeason& out)
      : sheet_(SheetKind::kHours, sheet, reading, out.faults), squads_(squads), players_(players), out_(out) {}

  [[nodiscard]] const std::vector<const SheetRow*>& rows() const { return sheet_.rows(); }
  std::vector<std::optional<Date>> dates() {
    sheet_.tell_date_order(Column::kDate);
    return sheet_.dates(Column::kDate);
  }

  // Empty where the row is at fault.
  std::optional<Exposure> read_row(const SheetRow& row, std::optional<Date> date) {
    const std::size_t before = sheet_.faults_so_far();
    Exposure out;
    const std::optional<std::uint32_t> squad = sheet_.squad(row, Column::kSquad, squads_);
    if (!date && sheet_.text(row, Column::kDate).empty())
      sheet_.fault(FaultCode::kMissing, row, Column::kDate, "the day of the session, such as 2026-11-24");
    const std::optional<Setting> setting = read_setting(row);
    out.player = players_.spelled(sheet_.text(row, Column::kPlayer));
    out.minutes = sheet_.minutes(row, Column::kMinutes, 0, kMostSessionMinutes);
    out.players = sheet_.whole(row, Column::kPlayers, 0, kMostSessionPlayers);
    out.stated_hours = sheet_.player_hours(row, Column::kHours);
    out.warm_up = sheet_.term<WarmUp>(row, Column::kWarmUp);
    out.warm_up_minutes = sheet_.minutes(row, Column::kWarmUpMinutes, 0, kMostSessionMinutes);
    out.left_out = listed_texts(sheet_.raw(row, Column::kLeftOut));
    out.needing_help = listed_texts(sheet_.raw(row, Column::kNeedingHelp));
    out.confirmed = sheet_.yes_no(row, Column::kConfirmed);
    if (!out.player.empty() && out.players.value_or(1) != 1)
      sheet_.fault(FaultCode::kContradiction, row, Column::kPlayers, "nothing, or 1: the row is one player's");
    // What lacks is only said of a row that was understood so far.
    if (sheet_.faults_so_far() != before || !squad || !date || !setting) return {};
    out.squad = *squad;
    out.date = *date;
    out.setting = *setting;
    if (!add_hours(row, out)) return {};
    return out;
  }

 private:
  SheetReader sheet_;
  const SquadNames& squads_;
  PlayerNames& players_;
  ReadSeason& out_;

  std::optional<Setting> read_setting(const SheetRow& row) {
    const std::size_t before = sheet_.faults_so_far();
    const std::optional<Setting> setting = sheet_.term<Setting>(row, Column::kSetting);
    if (!setting && sheet_.faults_so_far() == before)
      sheet_.fault(FaultCode::kMissing, row, Column::kSetting, "training or match");
    return setting;
  }

  bool add_hours(const SheetRow& row, Exposure& exposure) {
    const SessionHours hours =
        session_hours(out_.season.squads[exposure.squad], exposure.setting,
                      {exposure.minutes, exposure.players, exposure.stated_hours, !exposure.player.empty()});
    const bool match = exposure.setting == Setting::kMatch;
    if (hours.minutes_lack) {
      sheet_.fault(FaultCode::kMissing, row, Column::kMinutes, "the minutes of the session",
                   std::string("or state the squad's usual ") + (match ? "match" : "training") + " minutes");
    }
    if (hours.players_lack) {
      sheet_.fault(FaultCode::kMissing, row, Column::kPlayers,
                   match ? "the players on the field" : "the players who were there",
                   match ? "or state the squad's players on the field" : "or state how many players the squad has");
    }
    exposure.hours = hours.hours;
    exposure.defaulted = hours.defaulted;
    return !hours.minutes_lack && !hours.players_lack;
  }
};

}  // namespace

void read_hours(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads,
                PlayerNames& players, ReadSeason& out) {
  HoursReader reader(sheet, reading, squads, players, out);
  const std::vector<std::optional<Date>> dates = reader.dates();
  out.places.exposures.file = sheet.file;
  for (std::size_t i = 0; i < reader.rows().size(); ++i) {
    const SheetRow& row = *reader.rows()[i];
    std::optional<Exposure> exposure = reader.read_row(row, dates[i]);
    if (!exposure) continue;
    if (!reading.period.contains(exposure->date)) {
      out.outside_period.push_back(outside_period(sheet, row, exposure->date, reading));
      continue;
    }
    out.season.exposures.push_back(std::move(*exposure));
    out.places.exposures.lines.push_back(row.line);
  }
}

}  // namespace lanework::records
