#include "core/check/refute.h"

#include <algorithm>

#include "core/check/barred.h"
#include "core/check/judge.h"
#include "core/check/offered.h"
#include "core/check/order.h"

namespace lanework::check {
namespace {

// The easiest open rung and the least dose that the pins of a drill and the planner's candidates leave.
bool least_pick(const Drill& drill, const Matter& matter, Pick& out) {
  for (const int rung : open_rungs(drill, matter)) {
    for (std::size_t step = 0; step < drill.steps.size(); ++step) {
      out = {&drill, rung, static_cast<int>(step), drill.id};
      const auto kept = [&](const Pin& pin) { return pin.drill != drill.id || keeps(out, pin); };
      const std::vector<Pin>& pins = matter.tonight.pins;
      if (std::all_of(pins.begin(), pins.end(), kept) && not_offered(out, matter).empty()) return true;
    }
  }
  return false;
}

bool pinned(const Matter& matter, const std::string& drill) {
  const std::vector<Pin>& pins = matter.tonight.pins;
  return std::any_of(pins.begin(), pins.end(), [&](const Pin& pin) { return pin.drill == drill; });
}

bool sound(Selection& selection, const Matter& matter) {
  std::sort(selection.begin(), selection.end(),
            [&](const Pick& a, const Pick& b) { return stands_before(*a.drill, *b.drill, matter); });
  std::vector<Violation> violations;
  judge(selection, matter, true, violations);
  return violations.empty();
}

}  // namespace

Selection witness(const Matter& matter) {
  Selection pins;
  Selection routine;
  for (const auto& [id, drill] : matter.drills) {
    Pick pick;
    const bool of_routine = routine_position(matter, id) >= 0;
    if ((!pinned(matter, id) && !of_routine) || !least_pick(drill, matter, pick)) continue;
    if (pinned(matter, id)) pins.push_back(pick);
    routine.push_back(pick);
  }
  if (sound(pins, matter)) return pins;
  if (sound(routine, matter)) return routine;
  for (const Pick& pick : routine) {
    Selection one = pins;
    if (!pinned(matter, pick.drill->id)) one.push_back(pick);
    if (sound(one, matter)) return one;
  }
  return {};
}

}  // namespace lanework::check
