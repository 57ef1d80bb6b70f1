#include "core/people/player.h"

namespace lanework::people {

std::optional<int> age_on(const Player& player, Date day) {
  if (player.birth) return age_in_years(*player.birth, day);
  return player.stated_age;
}

bool holds_on(const Restriction& restriction, Date day) { return !restriction.until || day <= *restriction.until; }

std::string known_together(const std::string& restrictions, const std::string& reports) {
  if (reports.empty()) return restrictions;
  return restrictions.empty() ? reports : restrictions + ", reports " + reports;
}

}  // namespace lanework::people
