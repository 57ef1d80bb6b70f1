// What one player may land tonight at most, for whoever has a share of it only.
#pragma once

#include <cstdint>

#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"
#include "core/session/weekly.h"

namespace lanework::plan {

// Weighted landings in thousandths: the ceiling of the session with what the days before a match take off it, and no
// more than an even share of the week's ceiling, so that a share of every session is a share of the week. The week has
// the squad's slots, two at least, and where there are matches one more, that counts for what a match day may ask.
std::int64_t most_landings_tonight(const catalogue::Catalogue& catalogue, const session::Evening& evening,
                                   const session::Weekly& weekly);

}  // namespace lanework::plan
