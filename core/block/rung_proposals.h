// Rungs worth the lead's eye: what was done well several times in a row could go up, what was hardly done could go
// down. A proposal moves nothing: a rung moves where the lead has seen it and confirms it (Outline::rungs).
#pragma once

#include <vector>

#include "core/block/outline.h"

namespace lanework::block {

struct RungProposal {
  int drill = 0;  // index into Catalogue::drills
  int from = 0;   // rungs, as positions
  int to = 0;
  int sessions = 0;  // in a row
};

// Drills of the sets to come: first those that could go down, then the heaviest families. REQUIRES: outline.rolling.
std::vector<RungProposal> rung_proposals(const Outline& outline);

}  // namespace lanework::block
