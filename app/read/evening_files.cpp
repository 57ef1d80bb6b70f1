#include "app/read/evening_files.h"

#include <algorithm>
#include <filesystem>

#include "app/read/decode_text.h"
#include "app/read/files.h"

namespace lanework::read {
namespace {

namespace fs = std::filesystem;

struct DatesWord {
  const char* word;
  people::DateOrder order;
  people::SerialSystem serials;
};
constexpr DatesWord kDatesWords[] = {
    {"day-first", people::DateOrder::kDayFirst, people::SerialSystem::k1900},
    {"month-first", people::DateOrder::kMonthFirst, people::SerialSystem::k1900},
    {"serial-1904", people::DateOrder::kAsTheColumnTells, people::SerialSystem::k1904},
};

bool ends_with(const std::string& text, std::string_view ending) {
  return text.size() >= ending.size() && std::string_view(text).substr(text.size() - ending.size()) == ending;
}

class EveningLoader {
 public:
  EveningLoader(std::string squad_path, std::string shipped, const EveningOverrides& overrides)
      : squad_path_(std::move(squad_path)), shipped_(std::move(shipped)), overrides_(overrides) {}

  Result<EveningFiles> load() {
    Result<Document> squad = read_toml_file(squad_path_);
    if (!squad) return squad.faults();
    files_.squad = std::move(squad.value());
    load_catalogue();
    load_routine();
    load_document("strip", overrides_.strip, true, files_.strip);
    load_document("restrictions", overrides_.restrictions, false, files_.restrictions);
    load_roster();
    if (!faults_.empty()) return std::move(faults_);
    forget_roster_statements();
    return std::move(files_);
  }

 private:
  std::string squad_path_;
  std::string shipped_;
  const EveningOverrides& overrides_;
  EveningFiles files_;
  std::vector<std::string> folders_;
  Faults faults_;

  void add(const Faults& faults) { faults_.insert(faults_.end(), faults.begin(), faults.end()); }

  [[nodiscard]] Place place_of(std::string_view key) const {
    const Node* node = files_.squad.root.find(key);
    return {squad_path_, node != nullptr ? node->line : 0, node != nullptr ? node->column : 0, std::string(key)};
  }

  // The text under a key; a missing or wrong one is a fault when it is required.
  std::optional<std::string> named(std::string_view key, bool required) {
    const Node* node = files_.squad.root.find(key);
    if (node == nullptr) {
      if (required) faults_.push_back({FaultCode::kMissing, place_of(key), "nothing", "a file name", {}});
      return {};
    }
    if (node->kind == Node::Kind::kText && !node->text.empty()) return node->text;
    faults_.push_back({FaultCode::kWrongType, place_of(key), found_in_words(*node), "a file name", {}});
    return {};
  }

  // A file name of the squad file to a path. The squad file may lie in a folder of its own inside the club's
  // (../roster.csv); a name that leads further out is a fault.
  std::optional<std::string> inside(std::string_view key, const std::string& name) {
    const fs::path relative = fs::path(name).lexically_normal();
    const auto up = std::count(relative.begin(), relative.end(), "..");
    const bool leaves = relative.is_absolute() || up > 1;
    if (leaves || name.find('\0') != std::string::npos) {
      faults_.push_back({FaultCode::kFileUnreadable,
                         place_of(key),
                         quote(name),
                         "a file in the folder of the squad file or the one above",
                         {}});
      return {};
    }
    return (fs::path(squad_path_).parent_path() / relative).string();
  }

  struct Named {
    std::string path;
    Place from;  // empty for a flag
  };
  std::optional<Named> path_for(std::string_view key, const std::optional<std::string>& flag, bool required) {
    if (flag) return Named{*flag, {}};
    const std::optional<std::string> name = named(key, required);
    if (!name) return {};
    const std::optional<std::string> path = inside(key, *name);
    if (!path) return {};
    return Named{*path, place_of(key)};
  }

  void load_document(std::string_view key, const std::optional<std::string>& flag, bool required, Document& into) {
    const std::optional<Named> file = path_for(key, flag, required);
    if (!file) return;
    Result<Document> document = read_toml_file(file->path, file->from);
    if (document) into = std::move(document.value());
    if (!document) add(document.faults());
  }

  void load_catalogue() {
    folders_ = {shipped_};
    if (files_.squad.root.find("catalogue") != nullptr) {
      if (const auto file = path_for("catalogue", {}, true)) folders_.push_back(file->path);
    }
    Result<catalogue::CatalogueDocuments> read = read_catalogue_folders(folders_, place_of("catalogue"));
    if (read) files_.catalogue = std::move(read.value());
    if (!read) add(read.faults());
  }

  void load_routine() {
    std::optional<Named> routine;
    if (overrides_.routine) {
      routine = Named{*overrides_.routine, {}};
    } else if (const std::optional<std::string> name = named("routine", true)) {
      routine = ends_with(*name, ".toml") ? path_for("routine", {}, true) : Named{*name, place_of("routine")};
    }
    if (!routine) return;
    Result<Document> document = read_routine_file(routine->path, folders_, routine->from);
    if (document) files_.routine = std::move(document.value());
    if (!document) add(document.faults());
  }

  // slot.date, and how the roster's file is to be read, from the squad file. Its other keys are the door's.
  std::optional<Date> evening() {
    TableReader squad(squad_path_, &files_.squad.root, "", faults_);
    TableReader slot = squad.table("slot");
    const std::optional<Date> date = slot.date("date");
    if (date || slot.has("date")) return date;
    slot.fault(FaultCode::kMissing, "date", "nothing", "the date of the evening, such as 2026-11-26");
    if (!slot.present()) faults_.back().place = {squad_path_, 0, 0, "slot.date"};
    return {};
  }

  RosterStatement statement() {
    RosterStatement stated;
    TableReader squad(squad_path_, &files_.squad.root, "", faults_);
    stated.squad = squad.text_or("in_roster", "");
    if (squad.has("roster_encoding")) {
      stated.encoding = encoding_names()[static_cast<std::size_t>(squad.word("roster_encoding", encoding_names(), 0))];
    }
    std::vector<std::string_view> words;
    for (const DatesWord& row : kDatesWords) words.emplace_back(row.word);
    if (!squad.has("roster_dates")) return stated;
    const DatesWord& row = kDatesWords[squad.word("roster_dates", words, 0)];
    stated.order = row.order;
    stated.serials = row.serials;
    return stated;
  }

  void load_roster() {
    const std::optional<Date> date = evening();
    const std::size_t before = faults_.size();
    const RosterStatement stated = statement();
    const std::optional<Named> file = path_for("roster", overrides_.roster, true);
    if (!file || !date || faults_.size() > before) return;
    const Result<std::string> bytes = read_file(file->path, file->from);
    if (!bytes) return add(bytes.faults());
    Result<std::vector<people::Player>> roster = read_roster(file->path, bytes.value(), *date, stated);
    if (roster) files_.roster = std::move(roster.value());
    if (!roster) add(roster.faults());
  }

  void forget_roster_statements() {
    auto& entries = files_.squad.root.entries;
    const auto is_statement = [](const auto& entry) {
      return entry.first == "roster_dates" || entry.first == "roster_encoding";
    };
    entries.erase(std::remove_if(entries.begin(), entries.end(), is_statement), entries.end());
  }
};

}  // namespace

Result<Document> read_routine_file(const std::string& name, const std::vector<std::string>& catalogue_folders,
                                   const Place& from) {
  if (ends_with(name, ".toml")) return read_toml_file(name, from);
  std::string known;
  // The club's own folder, which comes last, wins over the shipped one.
  for (auto folder = catalogue_folders.rbegin(); folder != catalogue_folders.rend(); ++folder) {
    for (const std::string& path : files_in((fs::path(*folder) / "routines").string(), ".toml")) {
      const std::string id = fs::path(path).stem().string();
      if (id == name) return read_toml_file(path);
      known += (known.empty() ? "" : ", ") + id;
    }
  }
  return Fault{FaultCode::kUnknownName,
               from,
               "routine " + quote(name),
               known.empty() ? "a file name ending in .toml" : "one of " + known + ", or a file name ending in .toml",
               {}};
}

Result<EveningFiles> read_evening_files(const std::string& squad_path, const std::string& shipped_catalogue,
                                        const EveningOverrides& overrides) {
  return EveningLoader(squad_path, shipped_catalogue, overrides).load();
}

}  // namespace lanework::read
