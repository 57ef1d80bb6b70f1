// The session kernel: exact dynamic programming over drills in canonical order, at whole seconds.
//
// State before a drill: time left, formation of the last drill, credits of the current group (capped at its
// target), whether the first phase of a two-phase family was covered, and the active loads used so far.
// Only loads named active are in the state; solve.h brings one in when the relaxed answer breaks it.
// Values are packed objectives held in doubles, where they are exact (objective.h).
//
// Work and memory: sum over drills of options x credits x load levels x flags x seconds.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/plan/problem.h"

namespace lanework::plan {

struct KernelOption {
  int seconds = 0;
  int credits = 0;
  double cost = 0;
  std::array<int, kLoads> loads{};
  int option = 0;  // position in ProblemDrill::options
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
  std::array<bool, kLoads> active{};
  std::array<int, kLoads> ceiling{};
  std::vector<KernelDrill> drills;
  std::vector<KernelGroup> groups;
};

struct KernelAnswer {
  double value = 0;
  std::vector<int> options;  // for each drill the position in ProblemDrill::options, or -1
};

// Memory kept between calls, so that repeated solving does not allocate. One a thread.
class KernelWorkspace {
 public:
  std::vector<double> boundary;
  std::vector<double> inside;
  std::vector<double> take;
};

// Empty when nothing is feasible (at least one drill must be taken). Ties: a drill is taken rather than
// left out, then the earlier option.
std::optional<KernelAnswer> solve_kernel(const KernelProblem& problem, KernelWorkspace& workspace);

// The problem as the kernel reads it, with dominated options struck: another option of the same drill is
// no slower, gives no less credit, costs no more, and uses no more of any active load.
KernelProblem kernel_problem(const Problem& problem, const std::array<bool, kLoads>& active);

}  // namespace lanework::plan
