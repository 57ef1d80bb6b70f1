#include "app/cli/ledger/season_sheets.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>
#include <vector>

#include "app/cli/evening_flags.h"
#include "app/cli/ledger/season_calendar.h"
#include "app/cli/serve/rooms_of_ledger.h"

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
  const Sentence<1> went =
      asked.calendar.empty()
          ? Sentence<1>{"What was entered about sessions before {} went by its time: those days have no hours here. Keep "
                        "the sheets of a season while they can be made.",
                        "Lo que se anotó de las sesiones anteriores al {} se borró a su debido tiempo: esos días no tienen "
                        "horas aquí. Guarde las hojas de una temporada mientras se puedan hacer."}
          : Sentence<1>{"What was entered about sessions before {} went by its time: the hours of those days are the "
                        "calendar's with the squads' usual players, and nobody's count. Keep the sheets of a season while "
                        "they can be made.",
                        "Lo que se anotó de las sesiones anteriores al {} se borró a su debido tiempo: las horas de esos "
                        "días son las del calendario con los jugadores habituales de los equipos, y no las contó nadie. "
                        "Guarde las hojas de una temporada mientras se puedan hacer."};
  return Speaker(asked.language).say(went, gone.evenings_before);
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
  const auto catalogue =
      asked.calendar.empty() ? Result<std::string>(std::string()) : catalogue_folder(flags.catalogue);
  if (!catalogue) return catalogue.faults();
  const auto calendar = season_calendar(asked.calendar, catalogue.value(), asked.days);
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
