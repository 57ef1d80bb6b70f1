#include "app/cli/serve/injury_papers.h"

#include <filesystem>

#include "app/cli/care/incident_matter.h"
#include "app/cli/care/known_before_matter.h"
#include "app/cli/venue_matter.h"
#include "app/draw/incident.h"
#include "app/draw/referral.h"
#include "app/read/club_care.h"
#include "app/read/squad_roster.h"
#include "core/care/entries/read_cautiously.h"

namespace lanework::cli {
namespace {

// What the club's folder adds. Whatever of it cannot be read is a line to write on: somebody waits for the paper.
struct FromFolder {
  std::string venue;
  std::string return_rules;
  care::Ages ages;
};

FromFolder from_folder(const PaperPlaces& places, const serve::PaperAsked& asked) {
  FromFolder out;
  if (places.club.empty()) return out;
  const std::string squad = (std::filesystem::path(places.club) / "squads" / (asked.squad + ".toml")).string();
  if (const auto care = read::club_care_above(squad)) out.return_rules = care.value().return_rules.value_or("");
  const auto roster = read::read_squad_roster(squad, asked.incident.date);
  if (!roster) return out;
  out.ages = read::ages_on(roster.value().players, asked.incident.date);
  if (!roster.value().venue) return out;
  const auto plan = venue_plan_at(*roster.value().venue);
  if (!plan) return out;
  out.venue = plan.value().name;
  if (!plan.value().address.empty()) out.venue += ", " + plan.value().address;
  return out;
}

Result<std::string> paper_of(const PaperPlaces& places, const serve::PaperAsked& asked) {
  const FromFolder folder = from_folder(places, asked);
  draw::IncidentMatter matter = incident_matter(asked.incident);
  matter.club = asked.club;
  matter.squad = asked.squad_name;
  matter.player = asked.player_name;
  matter.venue = folder.venue;
  if (asked.known_before) {
    const auto rules = read::read_care_rules({places.catalogue, folder.return_rules, {}});
    if (!rules) return rules.faults();
    const auto entries = care::read_cautiously(asked.care, rules.value().returns);
    matter.known_before = known_before_matter(entries, rules.value(), asked.incident, folder.ages);
  }
  const draw::Paper paper = asked.letter_paper ? draw::Paper::kUsLetter : draw::Paper::kA4;
  const auto pages = asked.which == serve::PaperAsked::Which::kIncident ? draw::draw_incident(matter, paper)
                                                                        : draw::draw_referral(matter, paper);
  if (!pages) return pages.faults();
  return draw::write_pdf(pages.value());
}

}  // namespace

serve::InjuryPapers injury_papers(const PaperPlaces& places) {
  return [places](const serve::PaperAsked& asked) { return paper_of(places, asked); };
}

}  // namespace lanework::cli
