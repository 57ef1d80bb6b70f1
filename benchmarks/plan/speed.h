// How long one session takes to plan, where everything in the catalogue may enter.
#pragma once

namespace lanework::bench {

// Every drill, rung and dose of the catalogue, all constraints on.
void time_hardest(int count);
// Calls with linear prices, as a planner of whole blocks makes them.
void time_pricing(int count);
// The same sessions with each drill there several times over.
void time_growth(int count);

}  // namespace lanework::bench
