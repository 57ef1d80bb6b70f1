#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <map>
#include <memory>

#include "app/cli/care/care_tables.h"
#include "app/cli/columns.h"
#include "app/cli/command.h"
#include "app/cli/describe_drill.h"
#include "app/cli/evening_flags.h"
#include "app/cli/lane_remark.h"
#include "app/cli/ledger/ledger_folder.h"
#include "app/read/files.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::cli {
namespace {

struct CatalogueFlags {
  std::string catalogue;
  std::vector<std::string> added;  // the club's own folders
  std::string id;
  std::string sort = "family";
  std::string family;
};

Result<catalogue::Catalogue> load(const CatalogueFlags& flags) {
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return shipped.faults();
  std::vector<std::string> folders = {shipped.value()};
  folders.insert(folders.end(), flags.added.begin(), flags.added.end());
  const auto documents = read::read_catalogue_folders(folders);
  if (!documents) return documents.faults();
  return catalogue::read_catalogue(documents.value());
}

void sort_drills(std::vector<const catalogue::Drill*>& drills, const std::string& by) {
  std::stable_sort(drills.begin(), drills.end(), [&](const catalogue::Drill* a, const catalogue::Drill* b) {
    if (by == "family" && a->family != b->family) return a->family < b->family;
    if (by == "phase" && a->phase != b->phase) return a->phase < b->phase;
    if (by == "formation" && a->formation != b->formation) return a->formation < b->formation;
    if (by == "age" && a->age_from != b->age_from) return a->age_from < b->age_from;
    return a->name < b->name;
  });
}

int list(const CatalogueFlags& flags) {
  const auto catalogue = load(flags);
  if (!catalogue) return report(catalogue.faults());
  std::vector<const catalogue::Drill*> drills;
  for (const catalogue::Drill& drill : catalogue.value().drills) {
    if (flags.family.empty() || catalogue::word(catalogue::family_words(), drill.family) == flags.family) {
      drills.push_back(&drill);
    }
  }
  sort_drills(drills, flags.sort);
  std::vector<std::vector<std::string>> rows = {{"family", "drill", "id", "stand", "ages", "rungs"}};
  for (const catalogue::Drill* drill : drills) {
    std::string rungs;
    for (const catalogue::Rung& rung : drill->rungs) rungs += (rungs.empty() ? "" : " > ") + rung.change;
    rows.push_back({catalogue.value().family(drill->family).name, drill->name, drill->id,
                    std::string(catalogue::word(catalogue::formation_words(), drill->formation)),
                    std::to_string(drill->age_from) + "-" + std::to_string(drill->age_to), rungs});
  }
  std::fputs(in_columns(rows, "").c_str(), stdout);
  return kDone;
}

int show(const CatalogueFlags& flags) {
  const auto catalogue = load(flags);
  if (!catalogue) return report(catalogue.faults());
  const catalogue::Drill* drill = catalogue.value().find(flags.id);
  if (drill == nullptr) {
    return report({{FaultCode::kUnknownName,
                    {"", 0, 0, "drill"},
                    quote(flags.id),
                    "the id of a drill of the catalogue",
                    "'lanework catalogue list' shows them"}});
  }
  std::fputs(describe_drill(*drill, catalogue.value()).c_str(), stdout);
  return kDone;
}

// Routines of every folder, checked against the whole catalogue; of two with one name the later folder's is taken, as
// for an evening.
Result<std::vector<catalogue::Routine>> read_routines(const std::vector<std::string>& folders,
                                                      const catalogue::Catalogue& catalogue) {
  std::map<std::string, std::string> path_of;  // by file name
  for (const std::string& folder : folders) {
    for (const std::string& path : read::files_in(folder + "/routines", ".toml")) {
      path_of[path.substr(path.rfind('/') + 1)] = path;
    }
  }
  std::vector<catalogue::Routine> routines;
  Faults faults;
  const auto add = [&faults](const Faults& more) { faults.insert(faults.end(), more.begin(), more.end()); };
  for (const auto& [name, path] : path_of) {
    const auto document = read::read_toml_file(path);
    if (!document) {
      add(document.faults());
      continue;
    }
    auto routine = catalogue::read_routine(document.value(), catalogue);
    if (!routine) add(routine.faults());
    if (routine) routines.push_back(std::move(routine).value());
  }
  if (!faults.empty()) return faults;
  return routines;
}

int check(const CatalogueFlags& flags) {
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return report(shipped.faults());
  const auto catalogue = load(flags);
  if (!catalogue) return report(catalogue.faults());
  std::vector<std::string> folders = {shipped.value()};
  folders.insert(folders.end(), flags.added.begin(), flags.added.end());
  const auto routines = read_routines(folders, catalogue.value());
  const auto care_tables = check_care_tables(shipped.value(), catalogue.value().sources);
  const auto kinds = read_kind_table(shipped.value());
  Faults faults = routines ? Faults{} : routines.faults();
  if (!kinds) faults.insert(faults.end(), kinds.faults().begin(), kinds.faults().end());
  if (!care_tables) faults.insert(faults.end(), care_tables.faults().begin(), care_tables.faults().end());
  if (!faults.empty()) return report(faults);
  std::string remarks;
  for (const catalogue::Routine& routine : routines.value()) {
    const std::string remark = lane_remark(catalogue.value(), routine);
    if (!remark.empty()) remarks += "  " + remark + "\n";
  }
  std::printf("%zu drills, %zu routines, %zu tables of care, %zu kinds of entries, %zu sources: no fault.\n",
              catalogue.value().drills.size(), routines.value().size(), care_tables.value(), kinds.value().kinds.size(),
              catalogue.value().sources.size());
  if (!remarks.empty()) {
    std::printf("\nRemarks: lanes on which a routine is changed, with no match near and nobody held back\n%s",
                remarks.c_str());
  }
  return kDone;
}

}  // namespace

void add_catalogue_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("catalogue", "the drills: list, show, check");
  command->require_subcommand(1);
  const auto flags = std::make_shared<CatalogueFlags>();
  command->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  CLI::App* list_command = command->add_subcommand("list", "every drill in a line");
  list_command->add_option("--sort", flags->sort, "family, name, phase, formation or age")
      ->check(CLI::IsMember({"family", "name", "phase", "formation", "age"}));
  list_command->add_option("--family", flags->family, "only this family, such as hip-and-groin");
  list_command->callback([flags, &exit_status] { exit_status = list(*flags); });
  CLI::App* show_command = command->add_subcommand("show", "everything about one drill, with its sources");
  show_command->add_option("drill", flags->id, "id of the drill")->required();
  show_command->callback([flags, &exit_status] { exit_status = show(*flags); });
  CLI::App* check_command = command->add_subcommand("check", "validate the catalogue, and a folder of your own");
  check_command->add_option("folder", flags->added, "folders of the club's own drills");
  check_command->callback([flags, &exit_status] { exit_status = check(*flags); });
}

}  // namespace lanework::cli
