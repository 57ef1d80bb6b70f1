#include "core/people/read_players.h"

#include <algorithm>
#include <utility>

namespace lanework::people {
namespace {

constexpr int kMostYears = 120;
constexpr int kMostSizeGroup = 1000;
constexpr int kMostGrams = 500000;
constexpr int kMostRow = 10000000;

std::optional<int> whole(TableReader& reader, std::string_view key, int least, int most) {
  const bool there = reader.has(key);
  const auto value = static_cast<int>(reader.integer_or(key, least, least, most));
  return there ? std::optional<int>(value) : std::nullopt;
}

Player read_player(TableReader& reader) {
  Player player;
  player.id = reader.text("id");
  player.name = reader.text("name");
  player.shirt = reader.text_or("shirt", "");
  player.birth = reader.date("birth");
  player.stated_age = whole(reader, "age", 0, kMostYears);
  player.squads = reader.texts("squads");
  player.size_group = whole(reader, "size_group", 1, kMostSizeGroup);
  player.body_mass_grams = whole(reader, "body_mass_grams", 1, kMostGrams);
  player.contact_ok = reader.boolean_or("contact_ok", true);
  player.row = static_cast<int>(reader.integer_or("row", 0, 0, kMostRow));
  reader.finish();
  return player;
}

}  // namespace

Result<std::vector<Player>> read_players(const std::string& file, const Node& roster) {
  Faults faults;
  Node request = Node::make_table();
  request.line = roster.line;
  request.column = roster.column;
  request.set("roster", roster);
  TableReader reader(file, &request, "", faults);
  std::vector<Player> players;
  std::vector<std::pair<std::string, std::size_t>> ids;
  std::vector<TableReader> tables = reader.tables("roster");
  for (std::size_t i = 0; i < tables.size(); ++i) {
    players.push_back(read_player(tables[i]));
    if (!players.back().id.empty()) ids.emplace_back(players.back().id, i);
  }
  std::sort(ids.begin(), ids.end());
  for (std::size_t i = 1; i < ids.size(); ++i) {
    if (ids[i].first != ids[i - 1].first) continue;
    tables[ids[i].second].fault(FaultCode::kDuplicate, "id", quote(ids[i].first), "each id once");
  }
  if (!faults.empty()) return faults;
  return players;
}

Node write_players(const std::vector<Player>& players) {
  Node out = Node::make_array();
  for (const Player& player : players) {
    Node node = Node::make_table();
    node.set("id", Node::make_text(player.id));
    node.set("name", Node::make_text(player.name));
    if (!player.shirt.empty()) node.set("shirt", Node::make_text(player.shirt));
    if (player.birth) node.set("birth", Node::make_text(to_iso(*player.birth)));
    if (player.stated_age) node.set("age", Node::make_integer(*player.stated_age));
    if (!player.squads.empty()) {
      Node squads = Node::make_array();
      for (const std::string& squad : player.squads) squads.items.push_back(Node::make_text(squad));
      node.set("squads", std::move(squads));
    }
    if (player.size_group) node.set("size_group", Node::make_integer(*player.size_group));
    if (player.body_mass_grams) node.set("body_mass_grams", Node::make_integer(*player.body_mass_grams));
    node.set("contact_ok", Node::make_boolean(player.contact_ok));
    node.set("row", Node::make_integer(player.row));
    out.items.push_back(std::move(node));
  }
  return out;
}

}  // namespace lanework::people
