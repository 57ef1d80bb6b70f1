#include "core/club/read_club.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/club/read_settings.h"
#include "core/people/read_restrictions.h"

namespace lanework::club {
namespace {

void append(Faults& all, const Faults& more) { all.insert(all.end(), more.begin(), more.end()); }

// Only to look names up in.
catalogue::Catalogue all_drills_of(const std::vector<catalogue::Catalogue>& catalogues) {
  catalogue::Catalogue all;
  if (!catalogues.empty()) all = catalogues.front();
  for (const catalogue::Catalogue& catalogue : catalogues) {
    for (const catalogue::Drill& drill : catalogue.drills) {
      if (all.find(drill.id) != nullptr) continue;
      const auto after = [](const catalogue::Drill& a, const catalogue::Drill& b) { return a.id < b.id; };
      all.drills.insert(std::upper_bound(all.drills.begin(), all.drills.end(), drill, after), drill);
    }
  }
  return all;
}

class ClubReader {
 public:
  explicit ClubReader(const ClubDocuments& documents) : documents_(documents) {}

  ClubReading read() {
    read_catalogues();
    out_.club.settings = read_settings(documents_, all_drills_of(out_.club.catalogues), out_.faults);
    if (!readable_.empty() && readable_.size() == documents_.catalogues.size()) {
      gather_names();
      find_squads_without_file();
      for (const SquadDocuments& squad : documents_.squads) {
        if (squad.readable) read_squad(squad);
      }
    }
    share_restrictions();
    read_coaches_file();
    out_.club.reported_of_nobody = documents_.reported_of_nobody;
    std::sort(out_.club.squads.begin(), out_.club.squads.end(),
              [](const ClubSquad& a, const ClubSquad& b) { return a.id < b.id; });
    return std::move(out_);
  }

 private:
  const ClubDocuments& documents_;
  ClubReading out_;
  std::set<std::size_t> readable_;
  std::vector<std::string> player_ids_;
  std::vector<std::string> squad_names_;
  std::map<std::string, std::vector<people::Restriction>> restrictions_of_;  // by file
  std::map<std::string, std::string> restrictions_file_;                     // by squad id
  std::set<std::string> told_;  // faults of a document that several squads name, by line

  void read_catalogues() {
    for (std::size_t i = 0; i < documents_.catalogues.size(); ++i) {
      auto catalogue = catalogue::read_catalogue(documents_.catalogues[i]);
      if (catalogue) readable_.insert(i);
      if (!catalogue) append_once(catalogue.faults());
      out_.club.catalogues.push_back(catalogue ? std::move(catalogue).value() : catalogue::Catalogue());
    }
  }

  // Without any squad that is told already, and not once more for every coach.
  void read_coaches_file() {
    if (!documents_.coaches || documents_.squads.empty()) return;
    std::vector<std::string> squads;
    for (const SquadDocuments& squad : documents_.squads) squads.push_back(squad.id);
    out_.club.coaches = read_coaches(*documents_.coaches, squads, out_.faults);
  }

  void append_once(const Faults& faults) {
    for (const Fault& fault : faults) {
      if (told_.insert(to_line(fault)).second) out_.faults.push_back(fault);
    }
  }

  // Restrictions are the club's: they may name anybody of any roster.
  void gather_names() {
    std::set<std::string> squads;
    std::map<std::string, const people::Player*> known;
    for (const RosterFile& roster : documents_.rosters) {
      for (const people::Player& player : roster.players) {
        squads.insert(player.squads.begin(), player.squads.end());
        const auto [first, is_new] = known.emplace(player.id, &player);
        if (is_new) player_ids_.push_back(player.id);
        if (!is_new) same_person(*first->second, player, roster.file);
      }
    }
    for (const SquadDocuments& squad : documents_.squads) {
      for (const char* key : {"name", "in_roster"}) {
        const Node* node = squad.squad.root.find(key);
        if (node != nullptr && node->kind == Node::Kind::kText) squads.insert(node->text);
      }
    }
    squad_names_.assign(squads.begin(), squads.end());
  }

  void share_restrictions() {
    for (ClubSquad& squad : out_.club.squads) {
      for (const auto& [file, list] : restrictions_of_) {
        if (file == restrictions_file_[squad.id]) continue;
        squad.restrictions.list.insert(squad.restrictions.list.end(), list.begin(), list.end());
      }
    }
  }

  // Where a squad takes its whole roster, the squads that roster speaks of are nobody's concern.
  void find_squads_without_file() {
    std::set<std::string> claimed;
    std::set<std::size_t> taken_whole;
    for (const SquadDocuments& squad : documents_.squads) {
      const Node* in_roster = squad.squad.root.find("in_roster");
      if (in_roster == nullptr && squad.readable) taken_whole.insert(squad.roster);
      if (in_roster != nullptr) claimed.insert(in_roster->text);
    }
    for (std::size_t i = 0; i < documents_.rosters.size(); ++i) {
      if (taken_whole.count(i) > 0) continue;
      for (const people::Player& player : documents_.rosters[i].players) {
        for (const std::string& squad : player.squads) {
          if (!claimed.insert(squad).second) continue;
          out_.faults.push_back({FaultCode::kUnknownName,
                                 {documents_.rosters[i].file, player.row, 0, {}},
                                 "squad " + quote(squad),
                                 "a squad that a file in squads/ names as in_roster",
                                 {}});
        }
      }
    }
  }

  void same_person(const people::Player& first, const people::Player& second, const std::string& file) {
    if (first.name == second.name && first.birth == second.birth) return;
    out_.faults.push_back({FaultCode::kContradiction,
                           {file, second.row, 0, {}},
                           quote(second.id) + ", somebody else than in another roster of the club",
                           "one name and birth date for one id",
                           "ids made from a roster's rows are no ids for a club: give every roster a column of ids"});
  }

  void read_squad(const SquadDocuments& from) {
    const catalogue::Catalogue& catalogue = out_.club.catalogues[from.catalogue];
    const std::vector<people::Player>& roster = documents_.rosters[from.roster].players;
    const std::size_t before = out_.faults.size();
    ClubSquad squad;
    squad.id = from.id;
    squad.file = from.squad.file;
    squad.catalogue = from.catalogue;
    const bool routines = read_routines(from, catalogue, squad);
    const bool restricted = read_restrictions_of(from, squad);
    const Node& root = from.squad.root;
    if (root.find("week") == nullptr && root.find("slot") == nullptr) {
      out_.faults.push_back({FaultCode::kMissing, {squad.file, 0, 0, "week"}, "no slot", "at least one [[week]]", {}});
      return;
    }
    auto read = session::read_squad(from.squad, catalogue, roster);
    if (!read) return append(out_.faults, read.faults());
    squad.squad = std::move(read).value();
    const bool placed = find_strips(from, squad);
    take_players(roster, squad);
    const bool sound = out_.faults.size() == before && routines && restricted && placed;
    if (sound) out_.club.squads.push_back(std::move(squad));
  }

  // False where they have faults, which are told once however many squads share the file.
  bool read_restrictions_of(const SquadDocuments& from, ClubSquad& squad) {
    const auto read = people::read_restrictions(from.restrictions, player_ids_, squad_names_);
    if (!read) {
      append_once(read.faults());
      return false;
    }
    squad.restrictions = read.value();
    restrictions_of_.emplace(from.restrictions.file, squad.restrictions.list);
    restrictions_file_[squad.id] = from.restrictions.file;
    return add_reported(squad);
  }

  // One evening of a squad sees what was reported as its block does.
  bool add_reported(ClubSquad& squad) {
    const auto reported = people::read_restrictions(documents_.reported, player_ids_, squad_names_);
    if (!reported) {
      append_once(reported.faults());
      return false;
    }
    people::Restrictions& known = squad.restrictions;
    known.list.insert(known.list.end(), reported.value().list.begin(), reported.value().list.end());
    known.as_known = people::known_together(known.as_known, reported.value().as_known);
    squad.own_restrictions = known.list.size();
    return true;
  }

  // Likewise.
  bool read_routines(const SquadDocuments& from, const catalogue::Catalogue& catalogue, ClubSquad& squad) {
    const auto take = [&](const Document& document, catalogue::Routine& into) {
      const auto read = catalogue::read_routine(document, catalogue);
      if (read) into = read.value();
      if (!read) append_once(read.faults());
      return read.ok();
    };
    const bool routine = take(from.routine, squad.routine);
    return take(from.match_day_routine, squad.match_day_routine) && routine;
  }

  [[nodiscard]] std::string known_strips() const {
    std::string known;
    for (const ClubStrip& strip : out_.club.settings.strips) known += (known.empty() ? "" : ", ") + strip.id;
    return known.empty() ? "a strip of club.toml" : "one of the strips of club.toml: " + known;
  }

  void unknown(const Place& place, const std::string& found) {
    out_.faults.push_back({FaultCode::kUnknownName, place, found, known_strips(), {}});
  }

  // A strip that club.toml has, with faults of its own that are told already.
  [[nodiscard]] bool is_stated(const std::string& id) const {
    return std::any_of(documents_.strips.begin(), documents_.strips.end(),
                       [&](const StripDocument& strip) { return strip.id == id; });
  }

  // False where a strip is not there, or has no such lanes.
  bool find_strips(const SquadDocuments& from, ClubSquad& squad) {
    bool unsound = false;
    const std::vector<ClubStrip>& strips = out_.club.settings.strips;
    const auto index_of = [&strips](const std::string& id) {
      const auto is = [&](const ClubStrip& strip) { return strip.id == id; };
      return static_cast<std::size_t>(std::find_if(strips.begin(), strips.end(), is) - strips.begin());
    };
    const auto is_file = [&](const StripDocument& strip) {
      return !strip.file.empty() && strip.file == from.strip_file;
    };
    const auto own = std::find_if(documents_.strips.begin(), documents_.strips.end(), is_file);
    squad.strip = own == documents_.strips.end() ? strips.size() : index_of(own->id);
    unsound = squad.strip == strips.size();
    if (own == documents_.strips.end()) {
      const Node* node = from.squad.root.find("strip");
      unknown({squad.file, node->line, node->column, "strip"}, quote(node->text));
    }
    for (const session::WeekSlot& slot : squad.squad.weekly.slots) {
      const std::size_t index = slot.strip.empty() ? squad.strip : index_of(slot.strip);
      Place place = slot.place;
      if (index == strips.size()) {
        place.field += ".strip";
        if (!slot.strip.empty() && !is_stated(slot.strip)) unknown(place, quote(slot.strip));
        unsound = true;
      } else if (slot.lanes > strips[index].strip.lanes) {
        place.field += ".lanes";
        out_.faults.push_back({FaultCode::kOutOfRange,
                               place,
                               std::to_string(slot.lanes) + " lanes of " + strips[index].id,
                               "at most " + std::to_string(strips[index].strip.lanes) + ", as many as it has",
                               {}});
      }
    }
    return !unsound;
  }

  static void take_players(const std::vector<people::Player>& roster, ClubSquad& squad) {
    for (const people::Player& player : roster) {
      const bool member = squad.squad.in_roster.empty() || std::find(player.squads.begin(), player.squads.end(),
                                                                     squad.squad.in_roster) != player.squads.end();
      if (member) squad.players.push_back(player);
    }
  }
};

}  // namespace

ClubReading read_club(const ClubDocuments& documents) { return ClubReader(documents).read(); }

}  // namespace lanework::club
