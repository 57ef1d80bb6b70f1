// The sets that the first spell can have. Mostly one: the house routine. Where few are possible, all of them; else,
// where the routine has drills that none of its sessions is open to, or lacks a required family, those places filled in
// every way.
#pragma once

#include <cstdint>
#include <vector>

#include "core/block/problem.h"

namespace lanework::block {

struct FirstSets {
  std::vector<std::vector<char>> sets;
  // Drills of the routine that cannot be done: sets that keep one of them are not among 'sets'.
  std::vector<std::size_t> closed;
  // False: there are more ways than were listed.
  bool whole = true;
};

// At most so many.
FirstSets first_sets(const Problem& problem, std::size_t most);

// No block is worth more, fine points, whose first set keeps drill 'closed'.
std::int64_t bound_beside(const Problem& problem, std::size_t closed, int rounds);

}  // namespace lanework::block
