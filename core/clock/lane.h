// One file of players on one lane: first in, first out, nobody overtakes. The max-plus recursion of
// docs/model/clock.md and its closed form for equal players.
#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "core/base/units.h"

namespace lanework::clock {

struct LaneRun {
  int players = 1;         // in the file, 1 or more
  int passes = 1;          // each player's, 1 or more
  Milliseconds loop{};     // from a player's start until back in the file (or across, one way)
  Milliseconds gap{};      // between two starts, at least 1 ms
  Milliseconds headway{};  // between two returns, at most the gap
  bool gathers = false;    // all are back before the first starts again
};

// With the same loop for everybody. The oracle of run_lane.
Milliseconds closed_form(const LaneRun& run);

// The recursion with a loop time for every player and pass: loop(player, pass), both from 0, in ms; called
// pass by pass, in the order of the file. returned is scratch space. Time until the last one is back.
template <class Loop>
Milliseconds run_lane(const LaneRun& run, Loop&& loop, std::vector<std::int64_t>& returned) {
  const auto players = static_cast<std::size_t>(run.players);
  returned.assign(players, 0);
  std::int64_t start = -run.gap.count;  // the first player starts at 0
  std::int64_t last_back = -run.headway.count;
  for (int pass = 0; pass < run.passes; ++pass) {
    if (run.gathers && pass > 0) {  // afresh from the last one's return
      start = last_back - run.gap.count;
      last_back -= run.headway.count;
    }
    for (std::size_t player = 0; player < players; ++player) {
      start = std::max(start + run.gap.count, returned[player]);
      last_back = std::max(start + loop(static_cast<int>(player), pass), last_back + run.headway.count);
      returned[player] = last_back;
    }
  }
  return Milliseconds(last_back);
}

}  // namespace lanework::clock
