#include "app/read/evening_files.h"

#include <algorithm>
#include <filesystem>

#include "app/read/club_emphasis.h"
#include "app/read/files.h"
#include "app/read/named_files.h"

namespace lanework::read {
namespace {

namespace fs = std::filesystem;

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
    find_venue(files_.strip, 1, faults_);
    load_document("restrictions", overrides_.restrictions, false, files_.restrictions);
    load_roster();
    if (!faults_.empty()) return std::move(faults_);
    forget_roster_statements(files_.squad);
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

  struct Named {
    std::string path;
    Place from;  // empty for a flag
  };
  std::optional<Named> path_for(std::string_view key, const std::optional<std::string>& flag, bool required) {
    if (flag) return Named{*flag, {}};
    const std::optional<std::string> name = named_in(files_.squad, key, required, faults_);
    if (!name) return {};
    const std::optional<std::string> path = path_inside(files_.squad, key, *name, 1, faults_);
    if (!path) return {};
    return Named{*path, place_of(files_.squad, key)};
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
    Result<catalogue::CatalogueDocuments> read = read_catalogue_folders(folders_, place_of(files_.squad, "catalogue"));
    if (read) files_.catalogue = std::move(read.value());
    if (!read) add(read.faults());
    const auto club = club_folder_above(squad_path_);
    if (read && club) add(put_club_emphasis(*club, files_.catalogue));
  }

  void load_routine() {
    std::optional<Named> routine;
    if (overrides_.routine) {
      routine = Named{*overrides_.routine, {}};
    } else if (const std::optional<std::string> name = named_in(files_.squad, "routine", true, faults_)) {
      routine =
          ends_with(*name, ".toml") ? path_for("routine", {}, true) : Named{*name, place_of(files_.squad, "routine")};
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

  void load_roster() {
    const std::optional<Date> date = evening();
    const std::size_t before = faults_.size();
    const RosterStatement stated = roster_statement(files_.squad, faults_);
    const std::optional<Named> file = path_for("roster", overrides_.roster, true);
    if (!file || !date || faults_.size() > before) return;
    const Result<std::string> bytes = read_file(file->path, file->from);
    if (!bytes) return add(bytes.faults());
    Result<std::vector<people::Player>> roster = read_roster(file->path, bytes.value(), *date, stated);
    if (roster) files_.roster = std::move(roster.value());
    if (!roster) add(roster.faults());
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
