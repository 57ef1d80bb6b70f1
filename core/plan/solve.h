// Exact solution of a session problem: ceilings are relaxed first, and each one that the answer breaks is
// brought into the kernel's state until none is broken. An answer of a relaxation that keeps all ceilings
// is optimal for the problem itself.
#pragma once

#include <array>
#include <optional>

#include "core/plan/kernel.h"
#include "core/plan/problem.h"

namespace lanework::plan {

struct Solution {
  Choice choice;
  Evaluation evaluation;
  std::array<bool, kLoads> in_state{};  // the loads that had to be in the state
};

// Empty when pins, ceilings and clock cannot all hold.
std::optional<Solution> solve(const Problem& problem, KernelWorkspace& workspace);

}  // namespace lanework::plan
