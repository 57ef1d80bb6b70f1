#include "app/planning/season_turn.h"

#include <algorithm>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "app/planning/club_documents.h"
#include "app/read/club_folder.h"
#include "app/read/files.h"
#include "app/read/write_roster.h"
#include "core/club/turn.h"

namespace lanework::planning {
namespace {

namespace fs = std::filesystem;

Node texts_node(const std::vector<std::string>& texts) {
  Node out = Node::make_array();
  for (const std::string& text : texts) out.items.push_back(Node::make_text(text));
  return out;
}

std::string text_at(const Node& node, const char* key) {
  const Node* value = node.find(key);
  return value == nullptr ? std::string() : value->text;
}

using SquadsOf = std::map<std::string, std::vector<std::string>>;  // squads' ids by player

SquadsOf squads_now(const club::Club& club) {
  SquadsOf out;
  for (const club::ClubSquad& squad : club.squads) {
    for (const people::Player& player : squad.players) out[player.id].push_back(squad.id);
  }
  return out;
}

// By what the roster's column says, and what each squad's file calls itself there.
SquadsOf squads_then(const club::NextSeason& next) {
  std::map<std::string, std::string> ids;
  for (const auto& [id, squad] : next.squads) ids[text_at(squad.root, "in_roster")] = id;
  SquadsOf out;
  for (const people::Player& player : next.roster) {
    for (const std::string& label : player.squads) {
      const auto found = ids.find(label);
      if (found != ids.end()) out[player.id].push_back(found->second);
    }
  }
  return out;
}

// For each of the new squads those that its players come from, most of them first.
std::map<std::string, std::vector<std::string>> origins(const SquadsOf& now, const SquadsOf& then) {
  std::map<std::string, std::map<std::string, int>> counts;
  for (const auto& [player, squads] : then) {
    const auto from = now.find(player);
    if (from == now.end()) continue;
    for (const std::string& squad : squads) {
      for (const std::string& old : from->second) ++counts[squad][old];
    }
  }
  std::map<std::string, std::vector<std::string>> out;
  for (const auto& [squad, by_old] : counts) {
    std::vector<std::pair<std::string, int>> sorted(by_old.begin(), by_old.end());
    std::stable_sort(sorted.begin(), sorted.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
    for (const auto& [old, count] : sorted) out[squad].push_back(old);
  }
  return out;
}

// The change of each file, and what takes it back.
class Changes {
 public:
  explicit Changes(std::string club) : club_(std::move(club)) {}

  // text empty: the file goes.
  std::optional<Faults> add(const std::string& path, const std::optional<std::string>& text) {
    std::optional<std::string> before;
    if (fs::exists(club_ + "/" + path)) {
      auto read = read::read_file(club_ + "/" + path);
      if (!read) return read.faults();
      before = std::move(read).value();
    }
    if (before == text) return {};
    Node change = Node::make_table();
    change.set("path", Node::make_text(path));
    if (before) change.set("instead_of", Node::make_text(digest_of_document(*before)));
    if (text) change.set("text", Node::make_text(*text));
    changes_.items.push_back(std::move(change));
    Node back = Node::make_table();
    back.set("path", Node::make_text(path));
    if (before) back.set("text", Node::make_text(*before));
    back_.items.push_back(std::move(back));
    return {};
  }

  void put_into(Node& out) {
    out.set("changes", std::move(changes_));
    out.set("back", std::move(back_));
  }

 private:
  std::string club_;
  Node changes_ = Node::make_array();
  Node back_ = Node::make_array();
};

std::string within(const std::string& club, const std::string& file) {
  return fs::path(file).lexically_normal().lexically_relative(fs::path(club).lexically_normal()).string();
}

Result<Changes> changes_to(const std::string& club, const read::ClubFolder& folder, const club::NextSeason& next) {
  std::map<std::string, std::optional<std::string>> files;
  for (const club::SquadDocuments& squad : folder.documents.squads) files["squads/" + squad.id + ".toml"] = {};
  for (const club::RosterFile& roster : folder.documents.rosters) {
    const std::string path = within(club, roster.file);
    if (is_club_path(path)) files[path] = {};
  }
  files["club.toml"] = to_toml(next.club.root);
  files["roster.csv"] = read::roster_text(next.roster);
  files["restrictions.toml"] = to_toml(next.restrictions.root);
  if (next.coaches) files["coaches.toml"] = to_toml(next.coaches->root);
  for (const auto& [id, squad] : next.squads) files["squads/" + id + ".toml"] = to_toml(squad.root);
  Changes out(club);
  for (const auto& [path, text] : files) {
    if (auto faults = out.add(path, text)) return *faults;
  }
  return out;
}

Node squads_node(const club::NextSeason& next, const std::map<std::string, std::vector<std::string>>& from) {
  Node out = Node::make_array();
  for (const auto& [id, squad] : next.squads) {
    const auto was = from.find(id);
    Node row = Node::make_table();
    row.set("squad", Node::make_text(id));
    row.set("name", Node::make_text(text_at(squad.root, "name")));
    row.set("label", Node::make_text(text_at(squad.root, "in_roster")));
    row.set("was", texts_node(was == from.end() ? std::vector<std::string>() : was->second));
    out.items.push_back(std::move(row));
  }
  return out;
}

// Those that no new squad has most of its players from.
Node ends_node(const club::Club& club, const std::map<std::string, std::vector<std::string>>& from) {
  std::set<std::string> go_on;
  for (const auto& [squad, was] : from) go_on.insert(was.front());
  Node out = Node::make_array();
  for (const club::ClubSquad& squad : club.squads) {
    if (go_on.count(squad.id) > 0) continue;
    Node row = Node::make_table();
    row.set("squad", Node::make_text(squad.id));
    row.set("name", Node::make_text(squad.squad.name));
    out.items.push_back(std::move(row));
  }
  return out;
}

Node players_node(const read::ClubFolder& folder, const SquadsOf& now, const SquadsOf& then,
                  const std::optional<Date>& first_day) {
  const auto squads = [](const SquadsOf& of, const std::string& player) {
    const auto found = of.find(player);
    return texts_node(found == of.end() ? std::vector<std::string>() : found->second);
  };
  Node out = Node::make_array();
  std::set<std::string> seen;
  for (const club::RosterFile& roster : folder.documents.rosters) {
    for (const people::Player& player : roster.players) {
      if (!seen.insert(player.id).second) continue;
      Node row = Node::make_table();
      row.set("player", Node::make_text(player.id));
      row.set("name", Node::make_text(player.name));
      const auto age = first_day ? people::age_on(player, *first_day) : std::nullopt;
      if (age) row.set("age", Node::make_integer(*age));
      row.set("from", squads(now, player.id));
      row.set("to", squads(then, player.id));
      out.items.push_back(std::move(row));
    }
  }
  return out;
}

std::string day_at(const Node& root, const char* table, const char* key) {
  const Node* found = root.find(table);
  const Node* day = found == nullptr ? nullptr : found->find(key);
  return day == nullptr ? std::string() : day->text;
}

}  // namespace

Node told_node(const std::vector<club::TurnTold>& all) {
  Node list = Node::make_array();
  for (const club::TurnTold& told : all) {
    Node row = Node::make_table();
    row.set("code", Node::make_text(std::string(told.code)));
    row.set("sentence", Node::make_text(club::sentence_of(told)));
    Node values = Node::make_table();
    for (const auto& [key, value] : told.values) values.set(std::string(key), Node::make_text(value));
    row.set("values", std::move(values));
    list.items.push_back(std::move(row));
  }
  return list;
}

Result<Node> season_turn(const PlanningFiles& files) {
  const read::ClubFolder folder = read::read_club_folder(files.club, files.catalogue);
  if (!folder.faults.empty()) return folder.faults;
  const club::NextSeason next = club::turn_season(folder.documents, folder.club);
  auto changes = changes_to(files.club, folder, next);
  if (!changes) return changes.faults();
  const SquadsOf now = squads_now(folder.club);
  const SquadsOf then = squads_then(next);
  const auto from = origins(now, then);
  const std::string first_day = day_at(next.club.root, "season", "from");
  Node season = Node::make_table();
  season.set("from", Node::make_text(first_day));
  season.set("to", Node::make_text(day_at(next.club.root, "season", "to")));
  Node out = Node::make_table();
  out.set("season", std::move(season));
  out.set("first_monday", Node::make_text(day_at(next.club.root, "block", "first_monday")));
  out.set("squads", squads_node(next, from));
  out.set("ends", ends_node(folder.club, from));
  out.set("players", players_node(folder, now, then, parse_iso_date(first_day)));
  out.set("told", told_node(next.told));
  changes.value().put_into(out);
  return out;
}

}  // namespace lanework::planning
