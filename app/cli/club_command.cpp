#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <map>
#include <memory>
#include <set>
#include <system_error>
#include <utility>

#include "app/cli/club_report.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/read/club_folder.h"
#include "app/read/files.h"
#include "app/read/new_folder.h"
#include "app/read/write_roster.h"
#include "core/club/consistency.h"
#include "core/club/turn.h"

namespace lanework::cli {
namespace {

struct ClubFlags {
  std::string club;
  std::string catalogue;
  std::string to;
  bool json = false;
};

// What whole squads contradict is looked for only where the settings they are held against can be trusted.
bool settings_are_sound(const read::ClubFolder& folder) {
  const std::string& file = folder.documents.club.file;
  return !file.empty() && !folder.club.catalogues.empty() &&
         std::none_of(folder.faults.begin(), folder.faults.end(),
                      [&](const Fault& fault) { return fault.place.file == file; });
}

int check(const ClubFlags& flags) {
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return report(shipped.faults());
  read::ClubFolder folder = read::read_club_folder(flags.club, shipped.value());
  const bool sound = settings_are_sound(folder);
  Faults faults = std::move(folder.faults);
  ClubReport out{std::move(folder.club), {}, {}};
  if (sound) {
    const club::Settings& settings = out.club.settings;
    out.allocation = club::allocate(out.club, settings.block_from, settings.block_weeks);
    out.found = club::find_inconsistencies(out.club, out.allocation);
  }
  faults.insert(faults.end(), out.found.faults.begin(), out.found.faults.end());
  if (flags.json) std::fputs((to_json(club_node(out, faults), 2) + "\n").c_str(), stdout);
  if (!faults.empty()) return report(faults);
  if (!flags.json) std::fputs(club_text(out).c_str(), stdout);
  return kDone;
}

// Every TOML file of the folder that the turn does not write anew: strips, the club's own drills and routines.
Result<std::map<std::string, std::string>> kept_files(const read::ClubFolder& folder, const std::string& root) {
  namespace fs = std::filesystem;
  std::set<std::string> replaced = {fs::path(folder.documents.club.file).lexically_normal().string()};
  for (const club::SquadDocuments& squad : folder.documents.squads) {
    for (const Document* document : {&squad.squad, &squad.restrictions}) {
      replaced.insert(fs::path(document->file).lexically_normal().string());
    }
  }
  std::map<std::string, std::string> files;
  std::error_code error;
  for (fs::recursive_directory_iterator entry(root, error), end; !error && entry != end; entry.increment(error)) {
    const bool hidden = entry->path().filename().string().front() == '.';
    if (hidden && entry->is_directory()) entry.disable_recursion_pending();
    if (hidden || !entry->is_regular_file() || entry->path().extension() != ".toml") continue;
    if (replaced.count(entry->path().lexically_normal().string()) > 0) continue;
    auto bytes = read::read_file(entry->path().string());
    if (!bytes) return bytes.faults();
    files[entry->path().lexically_relative(root).string()] = std::move(bytes).value();
  }
  return files;
}

// What only whole squads contradict in a folder whose files are fine.
Faults contradictions_in(const read::ClubFolder& folder) {
  const club::Settings& settings = folder.club.settings;
  const club::Allocation allocation = club::allocate(folder.club, settings.block_from, settings.block_weeks);
  return club::find_inconsistencies(folder.club, allocation).faults;
}

bool lies_in(const std::string& inner, const std::string& outer) {
  namespace fs = std::filesystem;
  std::error_code ignored;
  const fs::path relative =
      fs::weakly_canonical(inner, ignored).lexically_relative(fs::weakly_canonical(outer, ignored));
  return !relative.empty() && *relative.begin() != "..";
}

int turn(const ClubFlags& flags) {
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return report(shipped.faults());
  if (lies_in(flags.to, flags.club)) {
    return report({{FaultCode::kUsage, {"", 0, 0, "--to"}, quote(flags.to), "a folder outside the old one", {}}});
  }
  const read::ClubFolder folder = read::read_club_folder(flags.club, shipped.value());
  if (!folder.faults.empty()) return report(folder.faults);
  if (const Faults faults = contradictions_in(folder); !faults.empty()) return report(faults);
  const club::NextSeason next = club::turn_season(folder.documents, folder.club);
  auto files = kept_files(folder, flags.club);
  if (!files) return report(files.faults());
  files.value()["club.toml"] = to_toml(next.club.root);
  files.value()["roster.csv"] = read::roster_text(next.roster);
  files.value()["restrictions.toml"] = to_toml(next.restrictions.root);
  if (next.coaches) files.value()["coaches.toml"] = to_toml(next.coaches->root);
  for (const auto& [id, squad] : next.squads) files.value()["squads/" + id + ".toml"] = to_toml(squad.root);
  const auto judge = [&](const std::string& there) { return read::read_club_folder(there, shipped.value()).faults; };
  const Faults faults = read::write_folder_atomically(flags.to, files.value(), judge);
  if (!faults.empty()) return report(faults);
  for (const club::TurnTold& told : next.told) std::printf("%s\n", club::sentence_of(told).c_str());
  // A squad of one is not refused: the lead mends the new folder, not the old one.
  for (const Fault& fault : contradictions_in(read::read_club_folder(flags.to, shipped.value()))) {
    std::printf("To mend: %s\n", to_line(fault).c_str());
  }
  return kDone;
}

}  // namespace

void add_club_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("club", "one folder, one club: check it, turn it to the next season");
  command->require_subcommand(1);
  const auto flags = std::make_shared<ClubFlags>();
  CLI::App* check_command = command->add_subcommand("check", "find every inconsistency, and say what there is");
  check_command->add_option("--club", flags->club, "the club's folder, with club.toml and squads/")->required();
  check_command->add_flag("--json", flags->json, "the answer as JSON (schema/club-check-answer.schema.json)");
  CLI::App* turn_command = command->add_subcommand("turn", "the same club for the next season, in a new folder");
  turn_command->add_option("--club", flags->club, "the club's folder; it is not changed")->required();
  turn_command->add_option("--to", flags->to, "the new folder, which must not exist yet")->required();
  for (CLI::App* each : {check_command, turn_command}) {
    each->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  }
  check_command->callback([flags, &exit_status] { exit_status = check(*flags); });
  turn_command->callback([flags, &exit_status] { exit_status = turn(*flags); });
}

}  // namespace lanework::cli
