// The one change that would help most, found by timing the session again with the change made.
#pragma once

#include <string>
#include <vector>

#include "core/clock/clock.h"

namespace lanework::clock {

Saving best_saving(const session::Session& session, const catalogue::Catalogue& catalogue,
                   const session::Evening& evening);

// '45 s', '2 min', '2 min 10 s'.
std::string duration_in_words(Seconds time);

}  // namespace lanework::clock
