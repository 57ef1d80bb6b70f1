#include "core/club/club.h"

#include <algorithm>

namespace lanework::club {
namespace {

constexpr int kYoungest = 8;
constexpr int kOldest = 19;

bool sits_out(const ClubSquad& squad, const people::Player& player, Date day) {
  const auto& list = squad.restrictions.list;
  return std::any_of(list.begin(), list.end(), [&](const people::Restriction& restriction) {
    return restriction.sits_out && restriction.player == player.id && people::holds_on(restriction, day);
  });
}

void add_locks(const session::Locks& more, const catalogue::Catalogue& catalogue, session::Locks& locks) {
  for (const session::Pin& pin : more.pins) {
    const auto same = [&](const session::Pin& other) { return other.drill == pin.drill; };
    const bool stands = std::any_of(locks.pins.begin(), locks.pins.end(), same);
    if (!stands && catalogue.find(pin.drill) != nullptr) locks.pins.push_back(pin);
  }
  for (const std::string& id : more.bans) {
    const bool stands = std::find(locks.bans.begin(), locks.bans.end(), id) != locks.bans.end();
    if (!stands && catalogue.find(id) != nullptr) locks.bans.push_back(id);
  }
}

}  // namespace

const ClubSquad* Club::find(const std::string& id) const {
  const auto before = [](const ClubSquad& squad, const std::string& wanted) { return squad.id < wanted; };
  const auto at = std::lower_bound(squads.begin(), squads.end(), id, before);
  return at != squads.end() && at->id == id ? &*at : nullptr;
}

int turnout_on(const ClubSquad& squad, Date day) {
  if (squad.squad.weekly.expected_turnout) return *squad.squad.weekly.expected_turnout;
  return static_cast<int>(std::count_if(squad.players.begin(), squad.players.end(),
                                        [&](const people::Player& player) { return !sits_out(squad, player, day); }));
}

std::optional<int> age_on(const ClubSquad& squad, Date day) {
  if (squad.squad.age) return squad.squad.age;
  std::optional<int> youngest;
  for (const people::Player& player : squad.players) {
    if (sits_out(squad, player, day)) continue;
    const std::optional<int> age = people::age_on(player, day);
    if (age && (!youngest || *age < *youngest)) youngest = age;
  }
  return youngest;
}

session::Locks locks_on(const Club& club, const ClubSquad& squad, Date day) {
  session::Locks locks;
  const catalogue::Catalogue& catalogue = club.catalogue_of(squad);
  add_locks(squad.squad.weekly.locks, catalogue, locks);
  const std::optional<int> age = age_on(squad, day);
  for (const BandLocks& band : club.settings.locks) {
    const bool whole_club = band.age_from <= kYoungest && kOldest <= band.age_to;
    const bool holds = whole_club || (age && band.age_from <= *age && *age <= band.age_to);
    if (holds) add_locks(band.locks, catalogue, locks);
  }
  return locks;
}

}  // namespace lanework::club
