// A session as the checker sees it: drills, rungs and doses that exist, in the order they stand.
#pragma once

#include <string>
#include <vector>

#include "core/check/matter.h"

namespace lanework::check {

struct Pick {
  const Drill* drill = nullptr;  // never null in a selection
  int rung = 0;                  // position in the drill's list
  int step = 0;
  std::string where;  // 'item 3 (side-plank)'
};

using Selection = std::vector<Pick>;

const Rung& rung_of(const Pick& pick);
const Step& step_of(const Pick& pick);
const Pick* find_pick(const Selection& selection, const std::string& drill);

}  // namespace lanework::check
