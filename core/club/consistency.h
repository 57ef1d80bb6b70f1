// What only the whole club can contradict. Faults must be mended before a block is planned; remarks are for the lead to
// read and to leave as they are where they are meant.
#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/club/allocation.h"
#include "core/club/club.h"

namespace lanework::club {

struct Remark {
  Place place;           // file and line, where there is one
  std::string sentence;  // players by id only
};

// A player who warms up with more than one squad.
struct SharedPlayer {
  std::string player;               // id
  std::vector<std::string> squads;  // ids, ascending
};

struct Consistency {
  Faults faults;  // in the order of the checks, by squad inside each
  std::vector<Remark> remarks;
  std::vector<SharedPlayer> shared;  // by player
};

// allocation: of the whole block.
Consistency find_inconsistencies(const Club& club, const Allocation& allocation);

}  // namespace lanework::club
