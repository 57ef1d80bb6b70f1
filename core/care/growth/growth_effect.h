// What fast growth changes for one player: fewer landings, and nothing eccentric that is new. The numbers are our own
// judgement; nothing shows that any such change makes injuries fewer. What a coach reads of it is an instruction like
// any other, without a measure and without the reason.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/care/growth/growth_reading.h"
#include "core/catalogue/catalogue.h"
#include "core/catalogue/loads.h"
#include "core/people/player.h"

namespace lanework::care::growth {

// For the planner and the swaps. Without effect: 100 per cent, and everything may be new.
struct GrowthEffect {
  int contacts_percent = 100;    // of the player's ceilings on landings, of a session and of a week
  bool new_eccentric_ok = true;  // may eccentric work that the player has not done, or a larger dose of it, be given?

  [[nodiscard]] bool any() const { return contacts_percent < 100 || !new_eccentric_ok; }
};
GrowthEffect effect_of(const GrowthTable& table, const GrowthReading& reading);

// The ceilings with the effect in them, rounded down.
catalogue::Ceilings spared(const catalogue::Ceilings& ceilings, const GrowthEffect& effect);

// The items of a session in which the player does something without landings instead, so that the others stay within
// the player's own ceiling: as few as can be, the heaviest first, of equal ones the later; ascending. loads: of one
// player, item by item; the ceiling in thousandths of a landing, what the days before a match take off already in it.
std::vector<std::size_t> items_beyond(std::int64_t contacts_ceiling_thousandths,
                                      const std::vector<catalogue::LoadSum>& loads);

// Is this drill barred for the player? times_done: how often the squad or the player has done it.
bool bars(const GrowthEffect& effect, const catalogue::Drill& drill, int times_done);

// The part of it that a restriction can say: landings light only, looked at again when the next measurement is due.
// The words are the same for everybody and name neither growth nor a body. Empty where the effect is none.
std::optional<people::Restriction> restriction_of(const GrowthEffect& effect, const GrowthReading& reading);

}  // namespace lanework::care::growth
