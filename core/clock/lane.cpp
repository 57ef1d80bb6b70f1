#include "core/clock/lane.h"

namespace lanework::clock {

Milliseconds closed_form(const LaneRun& run) {
  const Milliseconds once = run.gap * (run.players - 1) + run.loop;
  if (run.gathers) return once * run.passes;
  return std::max(run.gap * run.players, run.loop) * (run.passes - 1) + once;
}

}  // namespace lanework::clock
