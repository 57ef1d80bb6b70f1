// Squads drawn from a seed on the shipped catalogue, for tests and benches: ages, days, slots, strips, matches,
// what has been taught.
#pragma once

#include <cstdint>
#include <string>

#include "core/block/outline.h"

namespace lanework::block {

struct SquadShape {
  int weeks = 6;
  int sessions_a_week = 0;  // 0: two or three, drawn
  bool matches = true;
};

// The catalogue and routines are the shipped ones and outlive the outline.
Outline draw_squad(std::uint64_t seed, const SquadShape& shape = {});

}  // namespace lanework::block
