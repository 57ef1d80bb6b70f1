// What cannot be done tonight: 'Barred' of docs/model/session.md, written again.
#pragma once

#include <string>
#include <vector>

#include "core/check/matter.h"

namespace lanework::check {

struct Bar {
  std::string rule;  // key of a rule of docs/model/check.md
  std::string found;
  std::string allowed;
};

// Every reason why this rung of the drill cannot be done tonight; none when it can.
std::vector<Bar> bars_of(const Drill& drill, const Rung& rung, const Matter& matter);

// Positions of the rungs that can be done, ascending.
std::vector<int> open_rungs(const Drill& drill, const Matter& matter);

}  // namespace lanework::check
