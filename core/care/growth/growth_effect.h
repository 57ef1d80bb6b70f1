// What fast growth changes for one player: fewer landings, and nothing eccentric that is new. The numbers are our own
// judgement; nothing shows that any such change makes injuries fewer. What a coach reads of it is an instruction like
// any other, without a measure and without the reason.
#pragma once

#include <optional>

#include "core/care/growth/growth_reading.h"
#include "core/people/player.h"

namespace lanework::care::growth {

// Without effect: 100 per cent, and everything may be new.
struct GrowthEffect {
  int contacts_percent = 100;    // of the player's ceilings on landings, of a session and of a week
  bool new_eccentric_ok = true;  // may eccentric work that the squad has not done be given?

  [[nodiscard]] bool any() const { return contacts_percent < 100 || !new_eccentric_ok; }
};
GrowthEffect effect_of(const GrowthTable& table, const GrowthReading& reading);

// As a restriction: landings light only, a share of what others may land, no slow lowering that is new; looked at again
// when the next measurement is due. The words are the same for everybody and name neither growth nor a body. Empty
// where the effect is none.
std::optional<people::Restriction> restriction_of(const GrowthEffect& effect, const GrowthReading& reading);

}  // namespace lanework::care::growth
