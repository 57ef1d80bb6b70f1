// Why nothing fits: a set of demands that conflict, none of them idle, and the cheapest way out.
#pragma once

#include "core/plan/plan_session.h"

namespace lanework::plan {

// REQUIRES: solve(problem) is empty. margin: as taken off the slot to get the problem's budget.
Conflict find_conflict(const Problem& problem, Seconds margin, const catalogue::Catalogue& catalogue,
                       const session::Evening& evening, KernelWorkspace& workspace);

// The least budget at or above the problem's own at which 'wanted' holds for the optimal session, or -1 if
// not within two hours. wanted must be monotone in time.
template <class Wanted>
int least_budget(Problem problem, KernelWorkspace& workspace, const Wanted& wanted) {
  constexpr int kLongest = 7200;
  const auto holds = [&](int budget) {
    problem.budget = budget;
    const std::optional<Solution> solution = solve(problem, workspace);
    return solution && wanted(*solution);
  };
  int no = problem.budget;
  int yes = kLongest;
  if (!holds(yes)) return -1;
  while (no + 1 < yes) {
    const int middle = no + (yes - no) / 2;
    (holds(middle) ? yes : no) = middle;
  }
  return yes;
}

}  // namespace lanework::plan
