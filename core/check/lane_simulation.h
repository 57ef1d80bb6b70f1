// One set of a lane drill, player by player and pass by pass: docs/model/clock.md, 'Lane drills'. Times in ms.
#pragma once

#include <cstdint>

namespace lanework::check {

struct LaneSet {
  int players = 1;
  int passes = 1;
  std::int64_t loop = 0;
  std::int64_t gap = 1;
  std::int64_t headway = 1;
  bool gathers = false;  // all wait for the last before the next pass
};

// From the first start to the last return.
std::int64_t simulated(const LaneSet& set);

}  // namespace lanework::check
