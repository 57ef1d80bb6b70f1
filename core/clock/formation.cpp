#include <algorithm>

#include "core/clock/clock.h"
#include "core/clock/constants.h"

namespace lanework::clock {
namespace {

using catalogue::Formation;

Milliseconds regroup(Formation to, int players) {
  switch (to) {
    case Formation::kLane:
      return Milliseconds(kRegroupLaneBase + kRegroupLaneEach * players);
    case Formation::kSpread:
      return Milliseconds(kRegroupSpreadBase + kRegroupSpreadEach * players);
    case Formation::kPairs:
      break;
  }
  return Milliseconds(kRegroupPairsBase + kRegroupPairsEach * players);
}

}  // namespace

Milliseconds formation_change(Formation from, Formation to, const session::Evening& evening) {
  if (from == to) return Milliseconds(0);
  Milliseconds change = regroup(to, evening.turnout);
  if (from == Formation::kLane || to == Formation::kLane) {
    const Millimetres way(std::max(evening.strip.area_width, evening.strip.area_length).count / 2);
    change += travel_time(way, MillimetresPerSecond(kWalk));
  }
  return change;
}

int players_at_first_drill(const session::Evening& evening) {
  return evening.turnout - std::clamp(evening.late, 0, std::max(0, evening.turnout - 1));
}

Milliseconds gathering(const session::Evening& evening) {
  const int there = players_at_first_drill(evening);
  const int late = evening.turnout - there;
  Milliseconds time(kGatherBase + kGatherEach * there);
  if (late > 0) time += Milliseconds(kLateBase + kLateEach * late);
  return time;
}

}  // namespace lanework::clock
