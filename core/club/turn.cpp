#include "core/club/turn.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "core/club/age_band.h"

namespace lanework::club {
namespace {

constexpr int kOldestBand = 19;

Date a_year_on(Date date) {
  const CivilDate day = civil(date);
  const auto same = make_date(day.year + 1, day.month, day.day);
  return same ? *same : *make_date(day.year + 1, day.month, day.day - 1);  // 29 February
}

void erase(Node& table, std::string_view key) {
  auto& entries = table.entries;
  entries.erase(std::remove_if(entries.begin(), entries.end(), [&](const auto& entry) { return entry.first == key; }),
                entries.end());
}

Node* find(Node& table, std::string_view key) {
  for (auto& [name, value] : table.entries) {
    if (name == key) return &value;
  }
  return nullptr;
}

// A squad's name where the roster's squad column can hold it: without the marks that part two squads.
std::string as_label(std::string name) {
  for (char& c : name) {
    if (std::string_view(";/,|+").find(c) != std::string_view::npos) c = ' ';
  }
  return name;
}

// A squad of the old season and what becomes of it.
struct Turned {
  const ClubSquad* old = nullptr;
  const Document* document = nullptr;
  std::optional<int> band;  // the new one
  bool ends = false;        // too old for the club
  std::string id;
  std::string name;
  std::string label;  // in the roster's squad column
  std::string who;    // the label without its band: 'Girls'
  std::map<std::string, int> taught;
  std::size_t sources = 0;  // squads whose history came here
};

class SeasonTurn {
 public:
  SeasonTurn(const ClubDocuments& documents, const Club& club)
      : documents_(documents), club_(club), season_from_(a_year_on(club.settings.season_from)) {}

  NextSeason run() {
    name_squads();
    move_players();
    end_empty_squads();
    carry_history();
    write_club();
    for (Turned& squad : squads_) {
      if (!squad.ends) write_squad(squad);
    }
    std::sort(out_.squads.begin(), out_.squads.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    write_restrictions();
    write_coaches();
    return std::move(out_);
  }

 private:
  const ClubDocuments& documents_;
  const Club& club_;
  Date season_from_;
  std::vector<Turned> squads_;  // as Club::squads
  std::set<std::string> ids_;   // new ones, none twice
  // How many players of each old squad go to each new one.
  std::vector<std::map<std::size_t, int>> went_;
  NextSeason out_;

  void tell(std::string_view code, std::vector<std::pair<std::string_view, std::string>> values = {}) {
    out_.told.push_back({code, std::move(values)});
  }

  void name_squads() {
    std::optional<int> youngest;
    for (const ClubSquad& squad : club_.squads) {
      Turned turned;
      turned.old = &squad;
      const auto same = [&](const SquadDocuments& document) { return document.id == squad.id; };
      turned.document = &std::find_if(documents_.squads.begin(), documents_.squads.end(), same)->squad;
      for (const std::string& text : {squad.squad.in_roster, squad.squad.name, squad.id}) {
        if (!turned.band) turned.band = band_in(text);
      }
      if (turned.band) ++*turned.band;
      const int band = turned.band.value_or(0);
      turned.ends = band > kOldestBand;
      turned.id = with_band(squad.id, band);
      while (!turned.ends && !ids_.insert(turned.id).second) turned.id += "-2";
      turned.name = with_band(squad.squad.name, band);
      turned.label = squad.squad.in_roster.empty() ? as_label(turned.name) : with_band(squad.squad.in_roster, band);
      turned.who = squad.squad.in_roster.empty() ? std::string() : with_band(squad.squad.in_roster, 0);
      if (turned.ends) {
        tell("squad-ends", {{"squad", squad.squad.name}, {"oldest", std::to_string(kOldestBand)}});
      } else if (turned.band) {
        tell("squad-becomes", {{"squad", squad.squad.name}, {"name", turned.name}});
      } else {
        tell("squad-stays", {{"squad", squad.squad.name}});
      }
      if (turned.band && (!youngest || band < *youngest)) youngest = band;
      squads_.push_back(std::move(turned));
    }
    went_.resize(squads_.size());
    if (youngest) tell("no-youngest", {{"band", std::to_string(*youngest - 1)}});
  }

  // The squad for somebody too old for 'from': the least band that fits, of the same kind where there is one.
  [[nodiscard]] std::optional<std::size_t> squad_for(int age, const Turned& from) const {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < squads_.size(); ++i) {
      const Turned& squad = squads_[i];
      if (squad.ends || !squad.band || *squad.band <= age) continue;
      const auto rank = [&](const Turned& t) { return std::pair(*t.band, t.who == from.who ? 0 : 1); };
      if (!best || rank(squad) < rank(squads_[*best])) best = i;
    }
    return best;
  }

  std::optional<std::size_t> next_squad(const people::Player& player, std::size_t from) {
    const Turned& squad = squads_[from];
    const std::optional<int> age = people::age_on(player, season_from_);
    const bool stated = !player.birth && player.stated_age.has_value();
    const std::optional<int> then = stated ? std::optional<int>(*player.stated_age + 1) : age;
    if (!squad.ends && (!squad.band || !then || *then < *squad.band)) return from;
    const std::optional<std::size_t> other = then ? squad_for(*then, squad) : std::nullopt;
    if (other && !squad.ends) {
      tell("too-old", {{"player", player.id}, {"squad", squad.name}, {"to", squads_[*other].name}});
    }
    if (other && squad.ends) {
      tell("goes-from", {{"player", player.id}, {"squad", squad.old->squad.name}, {"to", squads_[*other].name}});
    }
    return other;
  }

  void move_players() {
    std::map<std::string, std::size_t> by_id;  // into out_.roster
    std::vector<std::string> leave;
    for (std::size_t from = 0; from < squads_.size(); ++from) {
      for (const people::Player& player : squads_[from].old->players) {
        const auto [known, is_new] = by_id.emplace(player.id, out_.roster.size());
        if (is_new) {
          out_.roster.push_back(player);
          out_.roster.back().squads.clear();
          if (!player.birth && player.stated_age) ++*out_.roster.back().stated_age;
        }
        const std::optional<std::size_t> to = next_squad(player, from);
        if (!to) continue;
        ++went_[from][*to];
        std::vector<std::string>& squads = out_.roster[known->second].squads;
        const std::string& label = squads_[*to].label;
        if (std::find(squads.begin(), squads.end(), label) == squads.end()) squads.push_back(label);
      }
    }
    for (const people::Player& player : out_.roster) {
      if (player.squads.empty()) leave.push_back(player.id);
    }
    out_.roster.erase(std::remove_if(out_.roster.begin(), out_.roster.end(),
                                     [](const people::Player& player) { return player.squads.empty(); }),
                      out_.roster.end());
    if (leave.empty()) return;
    std::string ids;
    for (const std::string& id : leave) ids += (ids.empty() ? "" : ", ") + id;
    tell("no-squad-left", {{"players", ids}});
  }

  void end_empty_squads() {
    for (std::size_t to = 0; to < squads_.size(); ++to) {
      const auto goes_there = [to](const std::map<std::size_t, int>& went) { return went.count(to) > 0; };
      if (squads_[to].ends || std::any_of(went_.begin(), went_.end(), goes_there)) continue;
      squads_[to].ends = true;
      tell("squad-empty", {{"squad", squads_[to].name}});
    }
  }

  void carry_history() {
    for (std::size_t from = 0; from < squads_.size(); ++from) {
      const Turned& squad = squads_[from];
      std::optional<std::size_t> most;
      for (const auto& [to, count] : went_[from]) {
        const int best = most ? went_[from][*most] : 0;
        if (count > best || (count == best && to == from)) most = to;
      }
      if (most) take_history(squad, squads_[*most]);
      if (squad.old->squad.taught.empty()) continue;
      if (!most) {
        tell("taught-to-nobody", {{"squad", squad.old->squad.name}});
        continue;
      }
      tell("taught-to", {{"squad", squad.old->squad.name},
                         {"to", squads_[*most].name},
                         {"count", std::to_string(went_[from][*most])},
                         {"of", std::to_string(squad.old->players.size())}});
    }
  }

  // Where the histories of two squads meet, a drill counts as often as the squad did it that did it less: new to some
  // is new.
  void take_history(const Turned& from, Turned& to) {
    std::map<std::string, int> merged;
    for (const auto& [drill, exposure] : from.old->squad.taught) {
      const auto known = to.taught.find(drill);
      if (to.sources == 0) merged[drill] = exposure.times;
      if (to.sources > 0 && known != to.taught.end()) merged[drill] = std::min(known->second, exposure.times);
    }
    to.taught = std::move(merged);
    ++to.sources;
  }

  // What was accepted goes along with the other files, until the lead accepts another.
  void tell_emphasis() {
    for (const catalogue::FamilyRow& family : club_.catalogues.front().families) {
      if (!family.emphasis) continue;
      tell("emphasis", {{"from", to_iso(family.emphasis->from)}, {"to", to_iso(family.emphasis->to)}});
      return;
    }
  }

  void write_club() {
    out_.club = {"club.toml", documents_.club.root};
    Node& root = out_.club.root;
    Node* season = find(root, "season");
    season->set("from", Node::make_text(to_iso(season_from_)));
    season->set("to", Node::make_text(to_iso(a_year_on(club_.settings.season_to))));
    const int past = static_cast<int>(session::weekday_of(season_from_));
    const Date monday{season_from_.days_since_epoch + (past == 0 ? 0 : 7 - past)};
    find(root, "block")->set("first_monday", Node::make_text(to_iso(monday)));
    const std::string season_to = to_iso(a_year_on(club_.settings.season_to));
    tell("season", {{"from", to_iso(season_from_)}, {"to", season_to}, {"monday", to_iso(monday)}});
    tell_emphasis();
    if (find(root, "holiday") != nullptr) tell("calendar-left-out");
    erase(root, "holiday");
    if (!documents_.reported.file.empty()) tell("reported-goes-along");
    if (Node* first = find(root, "served_first")) {
      Node ids = Node::make_array();
      for (const Turned& squad : squads_) {
        const auto& old = club_.settings.served_first;
        if (!squad.ends && std::find(old.begin(), old.end(), squad.old->id) != old.end()) {
          ids.items.push_back(Node::make_text(squad.id));
        }
      }
      *first = std::move(ids);
    }
  }

  // The routine under a key, kept where it is for the new age; else the one most squads of the old season had at that
  // age, if any had one.
  void settle_routine(const Turned& squad, const char* key, const catalogue::Routine& routine,
                      const catalogue::Routine ClubSquad::*of, Node& root) {
    if (!squad.band) return;
    const int age = *squad.band - 1;
    const auto fits = [age](const catalogue::Routine& r) { return r.age_from <= age && age <= r.age_to; };
    if (fits(routine)) return;
    std::map<std::string, int> used;
    for (const Turned& other : squads_) {
      const Node* stated = other.document->root.find(key);
      if (other.band != *squad.band + 1 || stated == nullptr || !fits(other.old->*of)) continue;
      ++used[stated->text];
    }
    const auto most =
        std::max_element(used.begin(), used.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    const bool is_match_day = std::string_view(key) != "routine";
    if (most != used.end()) {
      root.set(key, Node::make_text(most->first));
      tell(is_match_day ? "takes-match-routine" : "takes-routine",
           {{"squad", squad.name}, {"routine", most->first}, {"before", routine.id}});
    } else if (is_match_day) {
      erase(root, key);
    } else {
      tell("keeps-routine", {{"squad", squad.name},
                             {"routine", routine.id},
                             {"from", std::to_string(routine.age_from)},
                             {"to", std::to_string(routine.age_to)}});
    }
  }

  void write_squad(const Turned& squad) {
    Document document{squad.id + ".toml", squad.document->root};
    Node& root = document.root;
    for (const char* key : {"slot", "tonight", "match", "matches", "away_days", "expected_turnout", "taught"}) {
      erase(root, key);
    }
    root.set("name", Node::make_text(squad.name));
    root.set("roster", Node::make_text("../roster.csv"));
    root.set("in_roster", Node::make_text(squad.label));
    if (root.find("restrictions") != nullptr) root.set("restrictions", Node::make_text("../restrictions.toml"));
    if (squad.old->squad.age) root.set("age", Node::make_integer(std::min(*squad.old->squad.age + 1, kOldestBand)));
    settle_routine(squad, "routine", squad.old->routine, &ClubSquad::routine, root);
    settle_routine(squad, "match_day_routine", squad.old->match_day_routine, &ClubSquad::match_day_routine, root);
    keep_partners(root);
    if (!squad.taught.empty()) {
      Node taught = Node::make_table();
      for (const auto& [drill, times] : squad.taught) taught.set(drill, Node::make_integer(times));
      root.set("taught", std::move(taught));
    }
    out_.squads.emplace_back(squad.id, std::move(document));
  }

  [[nodiscard]] bool stays(const std::string& id) const {
    return std::any_of(out_.roster.begin(), out_.roster.end(), [&](const people::Player& p) { return p.id == id; });
  }

  // Pairs kept apart, without those who are gone.
  void keep_partners(Node& root) {
    Node* partners = find(root, "partners");
    Node* forbidden = partners != nullptr ? find(*partners, "forbidden") : nullptr;
    if (forbidden == nullptr) return;
    auto& pairs = forbidden->items;
    const auto gone = [this](const Node& pair) {
      return std::any_of(pair.items.begin(), pair.items.end(), [this](const Node& id) { return !stays(id.text); });
    };
    pairs.erase(std::remove_if(pairs.begin(), pairs.end(), gone), pairs.end());
  }

  // False where the restriction is for nobody who is still there; a squad's takes the squad's new name.
  bool turn_restriction(Node& restriction) const {
    if (const Node* player = restriction.find("player")) return stays(player->text);
    const std::string squad = restriction.find("squad")->text;
    for (const Turned& turned : squads_) {
      if (squad != turned.old->squad.name && squad != turned.old->squad.in_roster) continue;
      if (turned.ends) return false;
      restriction.set("squad", Node::make_text(squad == turned.old->squad.name ? turned.name : turned.label));
      return true;
    }
    return false;
  }

  void write_restrictions() {
    out_.restrictions = {"restrictions.toml", Node::make_table()};
    Node list = Node::make_array();
    std::set<std::string> read;
    int left_out = 0;
    for (const SquadDocuments& squad : documents_.squads) {
      if (squad.restrictions.file.empty() || !read.insert(squad.restrictions.file).second) continue;
      const Node* known = squad.restrictions.root.find("as_known");
      if (known != nullptr && out_.restrictions.root.entries.empty()) out_.restrictions.root.set("as_known", *known);
      const Node* restrictions = squad.restrictions.root.find("restriction");
      if (restrictions == nullptr) continue;
      for (Node restriction : restrictions->items) {
        if (turn_restriction(restriction)) {
          list.items.push_back(std::move(restriction));
        } else {
          ++left_out;
        }
      }
    }
    if (left_out > 0) tell("restrictions-left-out", {{"count", std::to_string(left_out)}});
    tell("restrictions-go-along", {{"count", std::to_string(list.items.size())}});
    out_.restrictions.root.set("restriction", std::move(list));
  }

  // Coaches go on with their squads; what they were taught stays with them.
  void write_coaches() {
    if (!documents_.coaches) return;
    out_.coaches = {"coaches.toml", documents_.coaches->root};
    Node* list = find(out_.coaches->root, "coach");
    if (list == nullptr) return;
    std::string without;
    for (Node& coach : list->items) {
      Node* squads = find(coach, "squads");
      const auto id_now = [&](const std::string& id) {
        const auto same = [&](const Turned& squad) { return squad.old->id == id && !squad.ends; };
        const auto at = std::find_if(squads_.begin(), squads_.end(), same);
        return at == squads_.end() ? std::string() : at->id;
      };
      Node now = Node::make_array();
      for (const Node& squad : squads->items) {
        if (const std::string id = id_now(squad.text); !id.empty()) now.items.push_back(Node::make_text(id));
      }
      if (now.items.empty() && !squads->items.empty()) {
        without += (without.empty() ? "" : ", ") + coach.find("id")->text;
      }
      *squads = std::move(now);
    }
    if (!without.empty()) tell("no-squad-to-coach", {{"coaches", without}});
  }
};

}  // namespace

NextSeason turn_season(const ClubDocuments& documents, const Club& club) { return SeasonTurn(documents, club).run(); }

}  // namespace lanework::club
