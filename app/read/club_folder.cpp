#include "app/read/club_folder.h"

#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>

#include "app/read/club_care.h"
#include "app/read/club_emphasis.h"
#include "app/read/evening_files.h"
#include "app/read/files.h"
#include "app/read/named_files.h"
#include "app/read/reported.h"
#include "core/care/entries/read_cautiously.h"
#include "core/care/entries/restrictions_document.h"

namespace lanework::read {
namespace {

namespace fs = std::filesystem;

class ClubLoader {
 public:
  ClubLoader(const std::string& folder, std::string shipped, const Node* entries)
      : folder_(folder), shipped_(std::move(shipped)), ledger_entries_(entries) {}

  ClubFolder load() {
    Result<Document> club = read_toml_file((folder_ / "club.toml").string());
    if (!club) return {{}, {}, club.faults()};
    documents_.club = std::move(club.value());
    load_strips();
    load_catalogue({}, {});
    day_ = first_monday();
    if (day_) load_squads();
    load_coaches();
    if (day_) load_reported();
    club::ClubReading read = club::read_club(documents_);
    faults_.insert(faults_.end(), read.faults.begin(), read.faults.end());
    return {std::move(documents_), std::move(read.club), std::move(faults_)};
  }

 private:
  fs::path folder_;
  std::string shipped_;
  const Node* ledger_entries_;  // may be null
  std::optional<Date> day_;
  club::ClubDocuments documents_;
  std::map<std::string, std::size_t> catalogues_;  // by the own folder's path; empty: the shipped one alone
  std::map<std::string, Document> read_;           // by path
  std::map<std::tuple<std::string, int, int, std::string>, std::optional<std::size_t>> rosters_;
  std::set<std::string> told_;  // by add_once
  Faults faults_;

  void add(const Faults& faults) { faults_.insert(faults_.end(), faults.begin(), faults.end()); }

  // What is wrong with one catalogue and another alike.
  void add_once(const Faults& faults) {
    for (const Fault& fault : faults) {
      if (told_.insert(to_line(fault)).second) faults_.push_back(fault);
    }
  }

  // Looked at here only to know a day for ages; its faults are told where the settings are read.
  [[nodiscard]] std::optional<Date> first_monday() const {
    const Node* block = documents_.club.root.find("block");
    const Node* day = block != nullptr ? block->find("first_monday") : nullptr;
    return day != nullptr && day->kind == Node::Kind::kText ? parse_iso_date(day->text) : std::nullopt;
  }

  const Document* document_at(const std::string& path, const Place& from) {
    const auto known = read_.find(path);
    if (known != read_.end()) return &known->second;
    Result<Document> document = read_toml_file(path, from);
    if (document) return &read_.emplace(path, std::move(document.value())).first->second;
    add(document.faults());
    return nullptr;
  }

  void load_strips() {
    const Node* list = documents_.club.root.find("strip");
    if (list == nullptr || list->kind != Node::Kind::kArray) return;
    for (std::size_t i = 0; i < list->items.size(); ++i) {
      if (list->items[i].kind != Node::Kind::kTable) continue;
      TableReader table(documents_.club.file, &list->items[i], "strip." + std::to_string(i + 1), faults_);
      load_strip(table, list->items[i]);
    }
  }

  void load_strip(TableReader& table, const Node& node) {
    club::StripDocument strip;
    strip.id = table.text("id");
    strip.place = table.place("id");
    if (!table.has("file")) {
      strip.strip = {documents_.club.file, Node::make_table()};
      strip.strip.root.line = node.line;
      strip.strip.root.column = node.column;
      for (const auto& entry : node.entries) {
        if (entry.first != "id") strip.strip.root.entries.push_back(entry);
      }
      find_venue(strip.strip, 0, faults_);
      documents_.strips.push_back(std::move(strip));
      return;
    }
    const std::string name = table.text("file");
    const bool lanes = table.has("lanes");
    const auto count = table.integer_or("lanes", 1, 1, 12);
    table.finish();
    Document at{documents_.club.file, node};
    const std::optional<std::string> path = name.empty() ? std::nullopt : path_inside(at, "file", name, 0, faults_);
    if (!path) return;
    strip.file = fs::path(*path).lexically_normal().string();
    const Document* document = document_at(*path, table.place("file"));
    strip.readable = document != nullptr;
    if (document != nullptr) strip.strip = *document;
    find_venue(strip.strip, 1, faults_);
    if (lanes) strip.strip.root.set("lanes", Node::make_integer(count));
    documents_.strips.push_back(std::move(strip));
  }

  // The one file of the folder that nothing names: it is there, or it is not.
  void load_coaches() {
    const std::string path = (folder_ / "coaches.toml").string();
    std::error_code ignored;
    if (!day_ || !fs::exists(path, ignored)) return;
    if (const Document* document = document_at(path, {})) documents_.coaches = *document;
  }

  // The entries that club.toml names, and those of a ledger, of anybody of any roster.
  void load_reported() {
    const ClubCare care = club_care(documents_.club, faults_);
    documents_.reported = {care.entries.value_or(""), Node::make_table()};
    if (!care.entries && ledger_entries_ == nullptr) return;
    const auto rules = read_care_rules({shipped_, care.return_rules.value_or(""), care.return_rules_place});
    if (!rules) return add(rules.faults());
    std::vector<people::Player> everybody;
    for (const club::RosterFile& roster : documents_.rosters) {
      everybody.insert(everybody.end(), roster.players.begin(), roster.players.end());
    }
    const care::Ages ages = ages_on(everybody, *day_);
    care::Knowledge known;
    if (care.entries) {
      auto of_the_file = fold_entries_file({*care.entries, care.entries_place}, rules.value(), ages);
      if (!of_the_file) return add(of_the_file.faults());
      known = std::move(of_the_file).value();
    }
    if (ledger_entries_ != nullptr) {
      const auto of_the_ledger = care::fold(care::read_cautiously(*ledger_entries_, rules.value().returns),
                                            rules.value().pain, rules.value().returns, ages);
      known.standing.insert(known.standing.end(), of_the_ledger.standing.begin(), of_the_ledger.standing.end());
      if (of_the_ledger.as_known) known.as_known = of_the_ledger.as_known;
    }
    put_reported(known, everybody);
  }

  // Entries are never deleted: of those who have left the club nothing holds.
  void put_reported(const care::Knowledge& known, const std::vector<people::Player>& everybody) {
    std::set<std::string> ids;
    for (const people::Player& player : everybody) ids.insert(player.id);
    std::vector<care::Standing> standing;
    std::set<std::string> of_nobody;
    for (const care::Standing& one : known.standing) {
      const bool there = ids.count(one.restriction.player) > 0;
      if (there) standing.push_back(one);
      if (!there) of_nobody.insert(one.restriction.player);
    }
    documents_.reported.root = care::restrictions_document(standing, known.as_known);
    documents_.reported_of_nobody.assign(of_nobody.begin(), of_nobody.end());
  }

  std::size_t load_catalogue(const std::string& own, const Place& from) {
    const auto [known, is_new] = catalogues_.emplace(own, documents_.catalogues.size());
    if (!is_new) return known->second;
    std::vector<std::string> folders = {shipped_};
    if (!own.empty()) folders.push_back(own);
    Result<catalogue::CatalogueDocuments> read = read_catalogue_folders(folders, from);
    if (!read) add(read.faults());
    if (read) {
      add_once(put_club_emphasis(folder_.string(), read.value()));
      documents_.catalogues.push_back(std::move(read.value()));
    }
    if (!read && !own.empty()) known->second = 0;
    return known->second;
  }

  void load_squads() {
    const std::string folder = (folder_ / "squads").string();
    const std::vector<std::string> paths = files_in(folder, ".toml");
    if (paths.empty()) {
      faults_.push_back({FaultCode::kMissing,
                         {folder, 0, 0, {}},
                         "no squad file",
                         "at least one squad, such as "
                         "squads/u13-kestrels.toml",
                         {}});
    }
    for (const std::string& path : paths) load_squad(path);
  }

  void load_squad(const std::string& path) {
    Result<Document> document = read_toml_file(path);
    if (!document) return add(document.faults());
    const std::size_t before = faults_.size();
    club::SquadDocuments squad;
    squad.id = fs::path(path).stem().string();
    squad.squad = std::move(document.value());
    std::vector<std::string> folders = {shipped_};
    if (const auto own = path_of(squad.squad, "catalogue", false)) {
      folders.push_back(*own);
      squad.catalogue = load_catalogue(*own, place_of(squad.squad, "catalogue"));
    }
    load_routines(folders, squad);
    if (const auto strip = path_of(squad.squad, "strip", true)) {
      squad.strip_file = fs::path(*strip).lexically_normal().string();
    }
    if (const auto file = path_of(squad.squad, "restrictions", false)) {
      const Document* restrictions = document_at(*file, place_of(squad.squad, "restrictions"));
      if (restrictions != nullptr) squad.restrictions = *restrictions;
    }
    const std::optional<std::size_t> roster = load_roster(squad.squad);
    squad.roster = roster.value_or(0);
    squad.readable = faults_.size() == before && roster.has_value();
    forget_roster_statements(squad.squad);
    documents_.squads.push_back(std::move(squad));
  }

  std::optional<std::string> path_of(const Document& squad, std::string_view key, bool required) {
    const std::optional<std::string> name = named_in(squad, key, required, faults_);
    return name ? path_inside(squad, key, *name, 1, faults_) : std::nullopt;
  }

  std::optional<Document> load_routine(const std::vector<std::string>& folders, const Document& squad,
                                       std::string_view key, const std::string& name) {
    std::optional<std::string> file = name;
    if (ends_with(name, ".toml")) file = path_inside(squad, key, name, 1, faults_);
    if (!file) return {};
    Result<Document> document = read_routine_file(*file, folders, place_of(squad, key));
    if (document) return std::move(document.value());
    add(document.faults());
    return {};
  }

  void load_routines(const std::vector<std::string>& folders, club::SquadDocuments& squad) {
    if (const auto name = named_in(squad.squad, "routine", true, faults_)) {
      if (auto routine = load_routine(folders, squad.squad, "routine", *name)) squad.routine = std::move(*routine);
    }
    constexpr std::string_view kKey = "match_day_routine";
    const auto stated = named_in(squad.squad, kKey, false, faults_);
    auto routine = load_routine(folders, squad.squad, kKey, stated.value_or(session::Weekly().match_day_routine));
    if (routine) squad.match_day_routine = std::move(*routine);
  }

  std::optional<std::size_t> load_roster(const Document& squad) {
    const std::size_t before = faults_.size();
    RosterStatement stated = roster_statement(squad, faults_);
    const std::optional<std::string> path = path_of(squad, "roster", true);
    if (!path || faults_.size() > before) return {};
    const std::string file = fs::path(*path).lexically_normal().string();
    const auto key =
        std::tuple(file, static_cast<int>(stated.order), static_cast<int>(stated.serials), stated.encoding);
    const auto known = rosters_.find(key);
    if (known != rosters_.end()) return known->second;
    std::optional<std::size_t>& index = rosters_[key];
    stated.squad.clear();
    stated.whole_club = true;
    const Result<std::string> bytes = read_file(*path, place_of(squad, "roster"));
    if (!bytes) {
      add(bytes.faults());
      return {};
    }
    Result<std::vector<people::Player>> players = read_roster(file, bytes.value(), *day_, stated);
    if (!players) {
      add(players.faults());
      return {};
    }
    index = documents_.rosters.size();
    documents_.rosters.push_back({file, std::move(players.value())});
    return index;
  }
};

}  // namespace

ClubFolder read_club_folder(const std::string& folder, const std::string& shipped_catalogue) {
  return ClubLoader(folder, shipped_catalogue, nullptr).load();
}

ClubFolder read_club_folder(const std::string& folder, const std::string& shipped_catalogue, const Node& entries) {
  return ClubLoader(folder, shipped_catalogue, &entries).load();
}

}  // namespace lanework::read
