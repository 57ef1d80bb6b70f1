#include <CLI/CLI.hpp>
#include <cstdio>
#include <memory>
#include <optional>
#include <utility>

#include "app/cli/care/care_commands.h"
#include "app/cli/care/incident_matter.h"
#include "app/cli/care/known_before_matter.h"
#include "app/cli/care/private_pages.h"
#include "app/cli/command.h"
#include "app/cli/page_files.h"
#include "app/cli/today.h"
#include "app/cli/venue_matter.h"
#include "app/draw/incident.h"
#include "app/draw/referral.h"
#include "app/read/club_care.h"
#include "app/read/files.h"
#include "app/read/squad_roster.h"
#include "core/care/incident/read_incident.h"

namespace lanework::cli {
namespace {

struct IncidentFlags {
  std::string file;
  std::string squad;
  std::string entries;
  std::string catalogue;
  std::string day;
  std::string out;
  std::string paper = "a4";
};

// ages: the player's is added, where the roster has it.
std::optional<Faults> add_squad(const IncidentFlags& flags, const care::Incident& incident,
                                draw::IncidentMatter& matter, care::Ages& ages) {
  if (flags.squad.empty()) return {};
  const auto squad = read::read_squad_roster(flags.squad, incident.date);
  if (!squad) return squad.faults();
  matter.club = squad.value().club;
  matter.squad = squad.value().squad;
  const people::Player* found = nullptr;
  for (const people::Player& player : squad.value().players) found = player.id == incident.player ? &player : found;
  if (found == nullptr) {
    return Faults{{FaultCode::kUnknownName,
                   {flags.file, 0, 0, "player"},
                   quote(incident.player),
                   "a player of " + flags.squad,
                   {}}};
  }
  matter.player = found->name;
  if (const auto age = people::age_on(*found, incident.date)) ages.emplace(found->id, *age);
  if (!squad.value().venue) return {};
  const auto plan = venue_plan_at(*squad.value().venue);
  if (!plan) return plan.faults();
  matter.venue = plan.value().name;
  if (!plan.value().address.empty()) matter.venue += ", " + plan.value().address;
  return {};
}

Result<draw::IncidentMatter> read_matter(const IncidentFlags& flags) {
  const auto day = day_or_today("--date", flags.day);
  if (!day) return day.faults();
  const auto document = read::read_toml_file(flags.file);
  if (!document) return document.faults();
  const auto incident = care::read_incident(document.value(), day.value());
  if (!incident) return incident.faults();
  draw::IncidentMatter matter = incident_matter(incident.value());
  care::Ages ages;
  if (const auto faults = add_squad(flags, incident.value(), matter, ages)) return *faults;
  if (flags.entries.empty()) return matter;
  EnteredFiles entered{flags.entries, flags.catalogue, {}};
  if (!flags.squad.empty()) {
    const auto club = read::club_care_above(flags.squad);
    if (!club) return club.faults();
    entered.return_rules = club.value().return_rules.value_or("");
  }
  auto known = known_before_matter(entered, incident.value(), ages);
  if (!known) return known.faults();
  matter.known_before = std::move(known).value();
  return matter;
}

using Draw = Result<draw::Pages> (*)(const draw::IncidentMatter&, draw::Paper);

int write(const IncidentFlags& flags, const char* stem, Draw draw) {
  const auto matter = read_matter(flags);
  if (!matter) return report(matter.faults());
  const auto pages = draw(matter.value(), paper_named(flags.paper));
  if (!pages) return report(pages.faults());
  const auto written = write_private_pages(stem, pages.value(), flags.out);
  if (!written) return report(written.faults());
  std::printf("%s\nFor the family and the clinician; it names a child.\n", written.value().c_str());
  return kDone;
}

void add(CLI::App& care, const char* name, const char* words, Draw draw, int& exit_status) {
  CLI::App* command = care.add_subcommand(name, words);
  const auto flags = std::make_shared<IncidentFlags>();
  command->add_option("incident", flags->file, "what is known (docs/formats/incident.md)")->required();
  command->add_option("--squad", flags->squad, "the squad file: for name, club and venue");
  command->add_option("--entries", flags->entries,
                      "what was entered (docs/formats/entries.md): adds what was known of the player before, for the "
                      "clinician's eyes");
  command->add_option("--catalogue", flags->catalogue, "folder of the catalogue, if not the shipped one");
  command->add_option("--date", flags->day, "the day of the report, such as 2026-11-26 (today)");
  command->add_option("--out", flags->out, "folder for the page")->required();
  command->add_option("--paper", flags->paper, "a4 or letter")->check(CLI::IsMember({"a4", "letter"}));
  command->callback([flags, name, draw, &exit_status] { exit_status = write(*flags, name, draw); });
}

}  // namespace

void add_care_incident_commands(CLI::App& care, int& exit_status) {
  add(care, "incident", "the report of an incident as PDF, with lines to write on for what is not known",
      draw::draw_incident, exit_status);
  add(care, "referral", "the letter to a clinician as PDF: what was seen, and what the club has to know",
      draw::draw_referral, exit_status);
}

}  // namespace lanework::cli
