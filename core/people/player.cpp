#include "core/people/player.h"

namespace lanework::people {

std::optional<int> age_on(const Player& player, Date day) {
  if (player.birth) return age_in_years(*player.birth, day);
  return player.stated_age;
}

bool holds_on(const Restriction& restriction, Date day) { return !restriction.until || day <= *restriction.until; }

}  // namespace lanework::people
