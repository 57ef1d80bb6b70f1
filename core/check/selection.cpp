#include "core/check/selection.h"

namespace lanework::check {

const Rung& rung_of(const Pick& pick) { return pick.drill->rungs[static_cast<std::size_t>(pick.rung)]; }

const Step& step_of(const Pick& pick) { return pick.drill->steps[static_cast<std::size_t>(pick.step)]; }

const Pick* find_pick(const Selection& selection, const std::string& drill) {
  for (const Pick& pick : selection) {
    if (pick.drill->id == drill) return &pick;
  }
  return nullptr;
}

}  // namespace lanework::check
