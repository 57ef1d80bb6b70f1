// The session kernel: exact dynamic programming over drills in canonical order, at whole seconds.
//
// State before a drill: time left, formation of the last drill, credits of the current group (capped at its
// target), and whether the first phase of a two-phase family was covered. Loads enter in two ways: as a
// price a unit, which keeps the state small and gives a lower bound (Lagrange), and as part of the state in
// a search over labels that the priced values guide (search_with_loads). Values are packed objectives held
// in doubles, where they are exact (objective.h).
//
// Work: sum over drills of (options + 3) x credits x flags x seconds; memory: the same for the largest group.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/plan/problem.h"

namespace lanework::plan {

using Prices = std::array<double, kLoads>;  // packed objective a unit of load, >= 0

struct KernelOption {
  int seconds = 0;
  int credits = 0;
  double cost = 0;
  std::array<int, kLoads> loads{};
  int option = 0;     // position in ProblemDrill::options
  double priced = 0;  // cost and the prices of its loads
};

struct KernelDrill {
  int formation = 0;
  double skip_cost = 0;
  bool must = false;
  std::vector<KernelOption> options;
};

struct KernelGroup {
  int first = 0;  // drills first .. last-1
  int last = 0;
  std::vector<double> reached_cost;  // by credits reached, 0 .. size-1; size-1 is the cap, at least 1
  double empty_cost = 0;             // added when nothing of the group is taken and no earlier phase covered the family
  int sets_flag = -1;                // first phase of a two-phase family: the flag it sets when covered
  int reads_flag = -1;               // second phase: the flag that lifts empty_cost
};

struct KernelProblem {
  int budget = 0;
  std::array<std::array<int, 3>, 3> change{};
  std::array<int, kLoads> ceiling{};
  Prices prices{};
  int most_new = -1;  // new drills that may be taken, kept in the state; below 0: not regarded
  std::vector<KernelDrill> drills;
  std::vector<KernelGroup> groups;
};

struct KernelAnswer {
  double value = 0;          // priced
  std::vector<int> options;  // for each drill the position in ProblemDrill::options, or -1
};

// Memory kept between calls, so that repeated solving does not allocate. One a thread.
class KernelWorkspace {
 public:
  std::vector<double> boundary;
  std::vector<double> inside;
  std::vector<double> take;
};

// The least priced value, ceilings not regarded. Empty when nothing fits (at least one drill must be
// taken). Ties: a drill is taken rather than left out, then the earlier option.
std::optional<KernelAnswer> solve_kernel(const KernelProblem& problem, KernelWorkspace& workspace);

// The least true cost of a session that keeps the ceilings of the loads named active, if it is below
// 'below'; empty otherwise. The value of the answer is the true cost. Any prices are valid; good ones make
// it fast.
std::optional<KernelAnswer> search_with_loads(const KernelProblem& problem, const std::array<bool, kLoads>& active,
                                              double below, KernelWorkspace& workspace);

// The problem as the kernel reads it. Struck are options that break a ceiling alone, and dominated ones:
// another option of the same drill is no slower, gives no less credit, costs no more, and uses no more of
// any active load. Where new drills are active they are counted in the state: their ceiling is small.
KernelProblem kernel_problem(const Problem& problem, const std::array<bool, kLoads>& active);

// Sets the prices and every option's priced cost.
void set_prices(KernelProblem& problem, const Prices& prices);

}  // namespace lanework::plan
