#include "app/cli/ledger/season_sheets.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>
#include <vector>

#include "app/cli/evening_flags.h"
#include "app/cli/serve/rooms_of_ledger.h"
#include "app/cli/today.h"
#include "app/read/club_folder.h"
#include "core/club/calendar.h"

namespace lanework::cli {
namespace {

// The club's lists, where they were brought in: what the report counts players by.
Result<std::string> squads_sheet(serve::Room& room, const SeasonSheetsAsked& asked) {
  const auto lists = room.directory->lists();
  if (!lists) return lists.faults();
  const auto stated = [](int minutes) { return minutes > 0 ? std::to_string(minutes) : std::string(); };
  std::string out = ledger::sheet_row({"squad", "name", "players", "training minutes", "match minutes"});
  for (const store::ListedSquad& squad : lists.value().squads) {
    const auto& players = lists.value().players;
    const auto count = std::count_if(players.begin(), players.end(), [&](const store::ListedPlayer& player) {
      return std::find(player.squads.begin(), player.squads.end(), squad.id) != player.squads.end();
    });
    out += ledger::sheet_row({squad.id, squad.name, count > 0 ? std::to_string(count) : std::string(),
                              stated(asked.training_minutes), stated(asked.match_minutes)});
  }
  return out;
}

// What nobody said anything about counts as held, or not at all: of days whose entries went that is no word of
// anybody's.
std::string what_went(const store::Gone& gone, const SeasonSheetsAsked& asked) {
  if (gone.evenings_before <= to_iso(asked.days.from)) return {};
  return "What was entered about sessions before " + gone.evenings_before + " went by its time: " +
         (asked.calendar.empty() ? "those days have no hours here."
                                 : "the hours of those days are the calendar's with the squads' usual players, and "
                                   "nobody's count.") +
         " Keep the sheets of a season while they can be made.";
}

// Of all squads, up to today: what is to come was not held yet.
Result<std::vector<ledger::CalendarSession>> calendar_of(const LedgerFlags& flags, const SeasonSheetsAsked& asked) {
  std::vector<ledger::CalendarSession> out;
  if (asked.calendar.empty()) return out;
  const auto catalogue = catalogue_folder(flags.catalogue);
  if (!catalogue) return catalogue.faults();
  const read::ClubFolder folder = read::read_club_folder(asked.calendar, catalogue.value());
  if (!folder.faults.empty()) return folder.faults;
  constexpr int kDays = 7;
  constexpr int kMondayOfEpoch = 3;  // 1 January 1970 was a Thursday
  const int from = asked.days.from.days_since_epoch;
  const int back = ((from + kMondayOfEpoch) % kDays + kDays) % kDays;
  const Date monday{from - back};
  const Date last = std::min(asked.days.until, today());
  if (last < monday) return out;
  const int weeks = (last.days_since_epoch - monday.days_since_epoch) / kDays + 1;
  for (const club::ClubSquad& squad : folder.club.squads) {
    for (const club::PlannedSlot& slot : club::expand(folder.club, squad, monday, weeks).slots) {
      if (slot.date < asked.days.from || last < slot.date) continue;
      out.push_back({{squad.id, to_iso(slot.date), to_text(slot.start)}, slot.match_day});
    }
  }
  return out;
}

}  // namespace

void add_usual_hours(CLI::App& command, SeasonSheetsAsked& asked) {
  command
      .add_option("--training-minutes", asked.training_minutes,
                  "how long a training usually is, where nobody confirmed it")
      ->check(CLI::Range(1, 600));
  command.add_option("--match-minutes", asked.match_minutes, "the same of a match")->check(CLI::Range(1, 600));
  command.add_option("--calendar", asked.calendar,
                     "a club's folder: sessions of its calendar count as held where nobody said otherwise");
}

Result<SeasonSheets> season_sheets(const LedgerFlags& flags, const SeasonSheetsAsked& asked,
                                   const ledger::State& state) {
  auto room = rooms_of(flags)();
  if (!room) return room.faults();
  const auto squads = squads_sheet(room.value(), asked);
  if (!squads) return squads.faults();
  const auto gone = room.value().store->gone();
  if (!gone) return gone.faults();
  const auto calendar = calendar_of(flags, asked);
  if (!calendar) return calendar.faults();
  const auto hours = hours_sheet(state, asked.days, calendar.value());
  const auto injuries = injuries_sheet(state, asked.days);
  return SeasonSheets{{{"sessions.csv", sessions_sheet(state, asked.days)},
                       {"hours.csv", hours.text},
                       {"injuries.csv", injuries.text},
                       {"squads.csv", squads.value()}},
                      injuries.left_out,
                      injuries.left_out_people,
                      hours.left_out,
                      injuries.people,
                      what_went(gone.value(), asked)};
}

}  // namespace lanework::cli
