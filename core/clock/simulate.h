// Simulated sessions: the same evening over and over with the spread of docs/model/clock.md.
#pragma once

#include <cstdint>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/clock/clock.h"
#include "core/session/evening.h"
#include "core/session/session.h"

namespace lanework::clock {

// Time of every simulated session in ms, in the order of the runs first, first + 1, ... A run depends on
// the seed and its own number only, so that runs may be shared out in any way.
std::vector<std::int64_t> simulate_sessions(const session::Session& session, const catalogue::Catalogue& catalogue,
                                            const session::Evening& evening, int first, int runs);

}  // namespace lanework::clock
