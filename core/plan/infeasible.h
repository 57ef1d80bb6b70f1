// Why nothing fits: a set of demands that conflict, none of them idle, and the cheapest way out.
#pragma once

#include "core/plan/plan_session.h"

namespace lanework::plan {

// REQUIRES: nothing keeps the evening's slot (core/plan/keep_slot.h). first_margin: as handed to keep_slot. Whatever is
// lifted, 'possible' is what the planner would answer: the margin is set anew each time.
Conflict find_conflict(const Problem& problem, Seconds first_margin, const catalogue::Catalogue& catalogue,
                       const session::Evening& evening, KernelWorkspace& workspace);

// The least whole number above 'no' at which something holds, or -1 if it does not within two hours. At one less it was
// tried, and did not hold.
template <class Holds>
int least_above(int no, const Holds& holds) {
  int yes = 7200;
  if (!holds(yes)) return -1;
  while (no + 1 < yes) {
    const int middle = no + (yes - no) / 2;
    (holds(middle) ? yes : no) = middle;
  }
  return yes;
}

// The least budget above the problem's own at which 'wanted' holds for the optimal session, or -1.
template <class Wanted>
int least_budget(Problem problem, KernelWorkspace& workspace, const Wanted& wanted) {
  return least_above(problem.budget, [&](int budget) {
    problem.budget = budget;
    const std::optional<Solution> solution = solve(problem, workspace);
    return solution && wanted(*solution);
  });
}

}  // namespace lanework::plan
