// What a lead should know of a house routine before the season: the lanes on which it cannot stand as written.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"

namespace lanework::cli {

// One line without its end; empty where the routine stands as written on every lane of 10 to 30 m, the lengths that
// squads commonly have (common practice).
std::string lane_remark(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine);

}  // namespace lanework::cli
