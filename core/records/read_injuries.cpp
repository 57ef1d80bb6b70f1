#include <unordered_map>

#include "core/records/sheets.h"

namespace lanework::records {
namespace {

using Column = InjuryColumn;

class InjuryReader {
 public:
  InjuryReader(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads, PlayerNames& players,
               Faults& faults)
      : sheet_(SheetKind::kInjuries, sheet, reading, faults), squads_(squads), players_(players) {
    sheet_.tell_date_order(Column::kDate, Column::kLossBegan, Column::kReturned, Column::kDaysMissed);
    dates_ = sheet_.dates(Column::kDate);
    loss_began_ = sheet_.dates(Column::kLossBegan);
    returned_ = sheet_.dates(Column::kReturned);
    days_missed_ = sheet_.date_lists(Column::kDaysMissed);
  }

  [[nodiscard]] const std::vector<const SheetRow*>& rows() const { return sheet_.rows(); }

  // Empty where the row is at fault.
  std::optional<InjuryRecord> read_row(std::size_t position) {
    const SheetRow& row = *rows()[position];
    const std::size_t before = sheet_.faults_so_far();
    InjuryRecord out;
    const std::optional<std::uint32_t> squad = sheet_.squad(row, Column::kSquad, squads_);
    if (!dates_[position] && sheet_.text(row, Column::kDate).empty())
      sheet_.fault(FaultCode::kMissing, row, Column::kDate, "the day of onset, such as 2026-11-24");
    out.player = players_.spelled(sheet_.text(row, Column::kPlayer));
    out.event = sheet_.text(row, Column::kEvent);
    read_terms_of(row, out);
    out.loss_began = loss_began_[position];
    out.returned = returned_[position];
    out.days_missed = days_missed_[position];
    out.note = sheet_.text(row, Column::kNote);
    // A date at fault was said for its column.
    if (sheet_.faults_so_far() != before || !squad || !dates_at_hand(row, position)) return {};
    out.squad = *squad;
    out.date = *dates_[position];
    check_dates(row, out);
    check_event(row, out);
    if (sheet_.faults_so_far() != before) return {};
    return out;
  }

 private:
  SheetReader sheet_;
  const SquadNames& squads_;
  PlayerNames& players_;
  std::vector<std::optional<Date>> dates_;
  std::vector<std::optional<Date>> loss_began_;
  std::vector<std::optional<Date>> returned_;
  std::vector<std::vector<Date>> days_missed_;
  struct FirstOfEvent {
    std::uint32_t squad;
    std::string player;
    Date date;
    int line;
  };
  std::unordered_map<std::string, FirstOfEvent> events_;

  void read_terms_of(const SheetRow& row, InjuryRecord& out) {
    out.setting = sheet_.term<Setting>(row, Column::kSetting);
    out.onset = sheet_.term<Onset>(row, Column::kOnset);
    out.contact = sheet_.term<Contact>(row, Column::kContact);
    out.region = sheet_.term<Region>(row, Column::kRegion);
    out.tissue = sheet_.term<Tissue>(row, Column::kTissue);
    out.side = sheet_.term<Side>(row, Column::kSide);
    out.activity = sheet_.term<Activity>(row, Column::kActivity);
    out.recurrence = sheet_.term<Recurrence>(row, Column::kRecurrence);
  }

  // Every date cell that is filled in was read.
  [[nodiscard]] bool dates_at_hand(const SheetRow& row, std::size_t position) const {
    return dates_[position] && (loss_began_[position] || sheet_.text(row, Column::kLossBegan).empty()) &&
           (returned_[position] || sheet_.text(row, Column::kReturned).empty()) &&
           (!days_missed_[position].empty() || listed_texts(sheet_.raw(row, Column::kDaysMissed)).empty());
  }

  void check_dates(const SheetRow& row, const InjuryRecord& injury) {
    const std::string onset = to_iso(injury.date);
    if (injury.loss_began && *injury.loss_began < injury.date)
      sheet_.fault(FaultCode::kContradiction, row, Column::kLossBegan, "a day not before the onset on " + onset);
    const Date began = injury.loss_began.value_or(injury.date);
    if (injury.returned && *injury.returned < began) {
      sheet_.fault(FaultCode::kContradiction, row, Column::kReturned,
                   "a day not before " + std::string(injury.loss_began ? "the loss began" : "the onset") + " on " +
                       to_iso(began));
    }
    if (injury.days_missed.empty()) return;
    if (injury.days_missed.front() < injury.date)
      sheet_.fault(FaultCode::kContradiction, row, Column::kDaysMissed, "days not before the onset on " + onset);
    if (injury.returned && injury.days_missed.back() >= *injury.returned) {
      sheet_.fault(FaultCode::kContradiction, row, Column::kDaysMissed,
                   "days before the return on " + to_iso(*injury.returned));
    }
  }

  void check_event(const SheetRow& row, const InjuryRecord& injury) {
    if (injury.event.empty()) return;
    const auto [known, is_new] =
        events_.emplace(injury.event, FirstOfEvent{injury.squad, injury.player, injury.date, row.line});
    const FirstOfEvent& first = known->second;
    if (is_new || (first.squad == injury.squad && first.player == injury.player && first.date == injury.date)) return;
    sheet_.fault(FaultCode::kContradiction, row, Column::kEvent,
                 "an event of one player on one day: line " + std::to_string(first.line) +
                     " has it for another squad, player or day");
  }
};

}  // namespace

void read_injuries(const people::Sheet& sheet, const SeasonReading& reading, const SquadNames& squads,
                   PlayerNames& players, ReadSeason& out) {
  InjuryReader reader(sheet, reading, squads, players, out.faults);
  out.places.injuries.file = sheet.file;
  for (std::size_t i = 0; i < reader.rows().size(); ++i) {
    const SheetRow& row = *reader.rows()[i];
    std::optional<InjuryRecord> injury = reader.read_row(i);
    if (!injury) continue;
    if (!reading.period.contains(injury->date)) {
      out.outside_period.push_back(outside_period(sheet, row, injury->date, reading));
      continue;
    }
    out.season.injuries.push_back(std::move(*injury));
    out.places.injuries.lines.push_back(row.line);
  }
}

}  // namespace lanework::records
