#include "core/plan/solve.h"

#include <cassert>

namespace lanework::plan {

std::optional<Solution> solve(const Problem& problem, KernelWorkspace& workspace) {
  Solution solution;
  while (true) {
    const KernelProblem kernel = kernel_problem(problem, solution.in_state);
    std::optional<KernelAnswer> answer = solve_kernel(kernel, workspace);
    if (!answer) return {};
    solution.choice = std::move(answer->options);
    solution.evaluation = evaluate(problem, solution.choice);
    assert(packed(solution.evaluation.objective) == static_cast<std::int64_t>(answer->value));
    bool brought_in = false;
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (solution.evaluation.loads[l] <= problem.ceiling[l]) continue;
      assert(!solution.in_state[l]);  // a load in the state never breaks its ceiling
      solution.in_state[l] = true;
      brought_in = true;
    }
    if (!brought_in) return solution;
  }
}

}  // namespace lanework::plan
