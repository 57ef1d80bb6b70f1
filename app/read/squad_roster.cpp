#include "app/read/squad_roster.h"

#include <algorithm>

#include "app/read/files.h"
#include "app/read/named_files.h"

namespace lanework::read {
namespace {

void append(Faults& faults, const Faults& more) { faults.insert(faults.end(), more.begin(), more.end()); }

std::vector<people::Player> roster_of(const Document& squad, Date day, Faults& faults) {
  RosterStatement stated = roster_statement(squad, faults);
  stated.whole_club = true;
  const auto name = named_in(squad, "roster", true, faults);
  const auto path = name ? path_inside(squad, "roster", *name, 1, faults) : std::nullopt;
  if (!path) return {};
  const auto bytes = read_file(*path, place_of(squad, "roster"));
  if (!bytes) {
    append(faults, bytes.faults());
    return {};
  }
  auto players = read_roster(*path, bytes.value(), day, stated);
  if (!players) {
    append(faults, players.faults());
    return {};
  }
  if (!stated.squad.empty()) {
    std::erase_if(players.value(), [&](const people::Player& player) {
      return std::find(player.squads.begin(), player.squads.end(), stated.squad) == player.squads.end();
    });
  }
  return std::move(players).value();
}

std::optional<std::string> venue_of(const Document& squad, Faults& faults) {
  const auto name = named_in(squad, "strip", false, faults);
  const auto path = name ? path_inside(squad, "strip", *name, 1, faults) : std::nullopt;
  if (!path) return {};
  auto strip = read_toml_file(*path, place_of(squad, "strip"));
  if (!strip) {
    append(faults, strip.faults());
    return {};
  }
  find_venue(strip.value(), 1, faults);
  const Node* venue = strip.value().root.find("venue");
  return venue == nullptr ? std::nullopt : std::optional<std::string>(venue->text);
}

}  // namespace

Result<SquadRoster> read_squad_roster(const std::string& squad_path, Date day) {
  const auto squad = read_toml_file(squad_path);
  if (!squad) return squad.faults();
  Faults faults;
  TableReader root(squad.value().file, &squad.value().root, "", faults);
  SquadRoster out;
  out.club = root.text_or("club", "");
  out.squad = root.text("name");
  out.players = roster_of(squad.value(), day, faults);
  out.venue = venue_of(squad.value(), faults);
  if (!faults.empty()) return faults;
  return out;
}

}  // namespace lanework::read
