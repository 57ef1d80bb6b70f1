#include "app/planning/club_lists.h"

#include <algorithm>
#include <map>

namespace lanework::planning {
namespace {

// 'under 13': by the age on the season's first day, as squads are named (common practice). Never the birth date.
std::string age_group_of(const people::Player& player, Date season_from) {
  const auto age = people::age_on(player, season_from);
  return age ? "under " + std::to_string(*age + 1) : std::string();
}

template <class Row>
std::map<std::string, Row> by_id(const std::vector<Row>& rows) {
  std::map<std::string, Row> out;
  for (const Row& row : rows) out.emplace(row.id, row);
  return out;
}

template <class Row>
std::string changes(const std::vector<Row>& before, const std::vector<Row>& after, const char* what) {
  const auto old_rows = by_id(before);
  const auto new_rows = by_id(after);
  int added = 0;
  int changed = 0;
  int gone = 0;
  for (const auto& [id, row] : new_rows) {
    const auto found = old_rows.find(id);
    if (found == old_rows.end()) {
      ++added;
    } else if (!(found->second == row)) {
      ++changed;
    }
  }
  for (const auto& [id, row] : old_rows) gone += new_rows.count(id) == 0 ? 1 : 0;
  if (added + changed + gone == 0) return {};
  return std::string(what) + ": " + std::to_string(added) + " new, " + std::to_string(changed) + " changed, " +
         std::to_string(gone) + " no longer there\n";
}

}  // namespace

store::Lists lists_of(const club::Club& club) {
  store::Lists out;
  out.club = club.settings.name;
  std::map<std::string, store::ListedPlayer> players;
  for (const club::ClubSquad& squad : club.squads) {
    out.squads.push_back({squad.id, squad.squad.name});
    for (const people::Player& player : squad.players) {
      auto& listed = players[player.id];
      listed.id = player.id;
      listed.name = player.name;
      listed.age_group = age_group_of(player, club.settings.season_from);
      listed.squads.push_back(squad.id);
    }
  }
  for (auto& [id, player] : players) {
    std::sort(player.squads.begin(), player.squads.end());
    out.players.push_back(std::move(player));
  }
  return out;
}

std::string changes_in_words(const store::Lists& before, const store::Lists& after) {
  std::string out;
  if (before.club != after.club) out += "Club: " + after.club + "\n";
  out += changes(before.squads, after.squads, "Squads");
  return out + changes(before.players, after.players, "Players");
}

}  // namespace lanework::planning
