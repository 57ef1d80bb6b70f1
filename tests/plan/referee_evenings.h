// Varied evenings on the shipped catalogue, drawn from a seed: what the planner is compared on.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/plan/problem.h"
#include "core/session/evening.h"

namespace lanework::plan {

// The shipped routines, by file name.
const std::vector<catalogue::Routine>& shipped_routines();

struct DrawnEvening {
  std::string name;  // 'evening 17'
  session::Evening evening;
  const catalogue::Routine* routine = nullptr;
  Problem problem;  // at a margin of a twelfth of the slot
};

enum class Drawn {
  kOrdinary,  // the routine and what stands in for it: the planner's default
  kAny,       // with free composition, larger doses, pins (some of which cannot hold), other ages' routines
  kHardest    // every drill, rung and dose of the catalogue may enter, and nothing is missing
};

DrawnEvening draw_evening(std::uint64_t seed, Drawn kind);

}  // namespace lanework::plan
