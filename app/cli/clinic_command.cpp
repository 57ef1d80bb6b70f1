#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>

#include "app/cli/clinic_matter.h"
#include "app/cli/clinic_source.h"
#include "app/cli/command.h"
#include "app/cli/evening_flags.h"
#include "app/cli/page_files.h"
#include "app/read/club_folder.h"
#include "app/read/evening_files.h"
#include "app/read/files.h"

namespace lanework::cli {
namespace {

struct ClinicFlags {
  std::string club;
  std::string squad;
  std::string routine;
  std::string catalogue;
  std::string out;
  std::string paper = "a4";
};

// A pack for nobody in particular has no day of its own; the same bytes must come out on every day.
constexpr const char* kNoDay = "1970-01-01";

int write(const ClinicSource& source, const ClinicFlags& flags) {
  const draw::Paper paper = paper_named(flags.paper);
  const auto pack = draw::draw_clinic(clinic_matter(source), paper);
  if (!pack) return report(pack.faults());
  const auto form = draw::draw_visit_form(visit_matter(source), paper);
  if (!form) return report(form.faults());
  std::vector<PageFile> files;
  if (const auto faults = add_page_files("first-evening", pack.value(), {}, files)) return report(*faults);
  if (const auto faults = add_page_files("visit", form.value(), {}, files)) return report(*faults);
  const auto written = write_page_files(files, flags.out);
  if (!written) return report(written.faults());
  for (const std::string& path : written.value()) std::printf("%s\n", path.c_str());
  return kDone;
}

int for_squad(const ClinicFlags& flags, const std::string& shipped) {
  const read::ClubFolder folder = read::read_club_folder(flags.club, shipped);
  if (!folder.faults.empty()) return report(folder.faults);
  const club::Club& club = folder.club;
  const club::ClubSquad* squad = club.find(flags.squad);
  if (squad == nullptr) {
    return report({{FaultCode::kUnknownName,
                    {"", 0, 0, "--squad"},
                    quote(flags.squad),
                    "the name of a file in squads/ without its ending",
                    {}}});
  }
  const auto source = clinic_source_of(club, *squad);
  if (!source) return report(source.faults());
  return write(source.value(), flags);
}

// What a lead hands out before squads and strips are known: two lanes of 15 m.
session::Strip usual_strip() {
  session::Strip strip;
  strip.name = "Any flat ground";
  strip.lanes = 2;
  strip.lane_length = Millimetres(15000);
  strip.cone_spacing = Millimetres(5000);
  strip.lane_gap = Millimetres(3000);
  strip.area_width = Millimetres(20000);
  strip.area_length = Millimetres(15000);
  return strip;
}

int for_routine(const ClinicFlags& flags, const std::string& shipped) {
  const auto documents = read::read_catalogue_folders({shipped});
  if (!documents) return report(documents.faults());
  const auto catalogue = catalogue::read_catalogue(documents.value());
  if (!catalogue) return report(catalogue.faults());
  const auto document = read::read_routine_file(flags.routine, {shipped}, {"", 0, 0, "--routine"});
  if (!document) return report(document.faults());
  const auto routine = catalogue::read_routine(document.value(), catalogue.value());
  if (!routine) return report(routine.faults());
  ClinicSource source;
  source.catalogue = &catalogue.value();
  source.routine = &routine.value();
  source.strip = usual_strip();
  source.squad = routine.value().name;
  source.facts = "Ages " + std::to_string(routine.value().age_from) + " to " + std::to_string(routine.value().age_to) +
                 ", " + std::to_string(routine.value().minutes) + " min.";
  source.date_iso = kNoDay;
  return write(source, flags);
}

int clinic(const ClinicFlags& flags) {
  const bool squad = !flags.club.empty() && !flags.squad.empty() && flags.routine.empty();
  const bool routine = flags.club.empty() && flags.squad.empty() && !flags.routine.empty();
  if (!squad && !routine) {
    return report({{FaultCode::kUsage,
                    {"", 0, 0, "clinic"},
                    "neither a squad of a club nor a routine alone",
                    "--club and --squad, or --routine",
                    {}}});
  }
  const auto shipped = catalogue_folder(flags.catalogue);
  if (!shipped) return report(shipped.faults());
  return squad ? for_squad(flags, shipped.value()) : for_routine(flags, shipped.value());
}

}  // namespace

void add_clinic_command(CLI::App& app, int& exit_status) {
  CLI::App* command = app.add_subcommand("clinic", "two pages for a coach's first evening, and a form for a visit");
  const auto flags = std::make_shared<ClinicFlags>();
  command->add_option("--club", flags->club, "the club's folder");
  command->add_option("--squad", flags->squad, "the squad's id: its file's name without the ending");
  command->add_option("--routine", flags->routine, "in place of a squad: a house routine, by id or file");
  command->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  command->add_option("--out", flags->out, "folder for the pages")->required();
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->callback([flags, &exit_status] { exit_status = clinic(*flags); });
}

}  // namespace lanework::cli
