#include "core/plan/kernel.h"

#include <algorithm>
#include <cassert>

#include "core/plan/sweep.h"

namespace lanework::plan {
namespace {

bool dominates(const KernelOption& a, const KernelOption& b, int cap, const std::array<bool, kLoads>& active) {
  if (a.seconds > b.seconds || a.cost > b.cost || std::min(a.credits, cap) < std::min(b.credits, cap)) return false;
  for (std::size_t l = 0; l < kLoads; ++l) {
    if (active[l] && a.loads[l] > b.loads[l]) return false;
  }
  return true;
}

bool breaks_alone(const Option& option, const std::array<int, kLoads>& ceiling) {
  for (std::size_t l = 0; l < kLoads; ++l) {
    if (option.loads[l] > ceiling[l]) return true;
  }
  return false;
}

std::vector<KernelOption> kernel_options(const Problem& problem, const ProblemDrill& drill, int cap,
                                         const std::array<bool, kLoads>& active) {
  std::vector<KernelOption> all;
  for (std::size_t i = 0; i < drill.options.size(); ++i) {
    const Option& o = drill.options[i];
    if (breaks_alone(o, problem.ceiling)) continue;
    const double cost = static_cast<double>(packed({0, 0, o.changes, o.preference}));
    all.push_back({o.seconds, std::min(o.credits, cap), cost, o.loads, static_cast<int>(i), cost});
  }
  std::vector<KernelOption> kept;
  for (std::size_t i = 0; i < all.size(); ++i) {
    bool struck = false;
    for (std::size_t j = 0; j < all.size() && !struck; ++j) {
      if (i == j || !dominates(all[j], all[i], cap, active)) continue;
      struck = j < i || !dominates(all[i], all[j], cap, active);  // of two equals the earlier stays
    }
    if (!struck) kept.push_back(all[i]);
  }
  return kept;
}

}  // namespace

std::optional<KernelAnswer> solve_kernel(const KernelProblem& problem, KernelWorkspace& workspace) {
  if (problem.budget < 0) return {};
  Sweep sweep(problem, workspace);
  if (forbidden(sweep.solve())) return {};
  return sweep.read_out();
}

void set_prices(KernelProblem& problem, const Prices& prices) {
  problem.prices = prices;
  for (KernelDrill& drill : problem.drills) {
    for (KernelOption& option : drill.options) {
      option.priced = option.cost;
      for (std::size_t l = 0; l < kLoads; ++l) option.priced += prices[l] * option.loads[l];
    }
  }
}

KernelProblem kernel_problem(const Problem& problem, const std::array<bool, kLoads>& active) {
  KernelProblem out;
  out.budget = problem.budget;
  out.change = problem.change;
  out.ceiling = problem.ceiling;
  constexpr auto kNew = static_cast<std::size_t>(Load::kNewDrills);
  if (active[kNew]) out.most_new = problem.ceiling[kNew];
  for (const Group& group : problem.groups) {
    KernelGroup kernel_group;
    const int cap = std::max(1, group.target);
    for (int c = 0; c <= cap; ++c) {
      kernel_group.reached_cost.push_back(static_cast<double>(packed({0, shortfall_cost(group, c), 0, 0})));
    }
    out.groups.push_back(std::move(kernel_group));
  }
  int flag = 0;
  for (const FamilyDemand& family : problem.families) {
    if (!family.required || family.groups.empty()) continue;
    const auto last = static_cast<std::size_t>(family.groups.back());
    out.groups[last].empty_cost = static_cast<double>(kUncoveredUnit);
    if (family.groups.size() < 2) continue;
    assert(family.groups.size() == 2 && flag < 2);
    out.groups[static_cast<std::size_t>(family.groups.front())].sets_flag = flag;
    out.groups[last].reads_flag = flag++;
  }
  int position = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    out.groups[g].first = position;
    const int cap = std::max(1, problem.groups[g].target);
    while (position < static_cast<int>(problem.drills.size()) &&
           problem.drills[static_cast<std::size_t>(position)].group == static_cast<int>(g)) {
      const ProblemDrill& drill = problem.drills[static_cast<std::size_t>(position++)];
      out.drills.push_back({static_cast<int>(drill.formation), static_cast<double>(packed({0, 0, drill.left_out, 0})),
                            drill.pinned, kernel_options(problem, drill, cap, active)});
    }
    out.groups[g].last = position;
  }
  return out;
}

}  // namespace lanework::plan
