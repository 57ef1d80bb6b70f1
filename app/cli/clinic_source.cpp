#include "app/cli/clinic_source.h"

#include <set>

#include "app/cli/venue_matter.h"
#include "core/club/calendar.h"
#include "core/club/coaches.h"

namespace lanework::cli {
namespace {

std::string with_capital(std::string word) {
  if (!word.empty() && word[0] >= 'a' && word[0] <= 'z') word[0] = static_cast<char>(word[0] - 'a' + 'A');
  return word;
}

// 'Early teens, 20 min. Tuesday 18:00, Thursday 18:00'
std::string facts_of(const club::ClubSquad& squad) {
  std::set<int> minutes;
  std::string week;
  for (const session::WeekSlot& slot : squad.squad.weekly.slots) {
    minutes.insert(static_cast<int>(slot.length.count / 60));
    week += (week.empty() ? "" : ", ") + with_capital(session::to_words(slot.weekday)) + " " + to_text(slot.start);
  }
  std::string out = squad.routine.name;
  if (!minutes.empty()) {
    const bool one = minutes.size() == 1;
    out += ", " + std::to_string(*minutes.begin()) + (one ? "" : " to " + std::to_string(*minutes.rbegin())) + " min";
  }
  return out + (week.empty() ? "." : ". " + week + ".");
}

// The strip as the squad has it on most of its evenings: that of its first slot.
session::Strip strip_of(const club::Club& club, const club::ClubSquad& squad) {
  const club::Calendar calendar = club::expand(club, squad, club.settings.block_from, club.settings.block_weeks);
  for (const club::PlannedSlot& slot : calendar.slots) {
    if (!slot.match_day) return slot.strip;
  }
  return club.settings.strips[squad.strip].strip;
}

}  // namespace

Result<ClinicSource> clinic_source_of(const club::Club& club, const club::ClubSquad& squad) {
  ClinicSource source;
  source.catalogue = &club.catalogue_of(squad);
  source.routine = &squad.routine;
  source.strip = strip_of(club, squad);
  source.club = club.settings.name;
  source.squad = squad.squad.name;
  source.facts = facts_of(squad);
  source.date_iso = to_iso(club.settings.block_from);
  const auto venue = venue_plan_of(source.strip);
  if (!venue) return venue.faults();
  if (venue.value()) source.action_plan = action_plan_matter(*venue.value(), club.settings.block_from);
  source.players = club::turnout_on(squad, club.settings.block_from);
  if (club.coaches) {
    for (const club::Coach* coach : club::coaches_of(*club.coaches, squad.id)) {
      source.taught.push_back(coach->id + ": " + club::taught_in_words(*coach));
    }
  }
  return source;
}

}  // namespace lanework::cli
