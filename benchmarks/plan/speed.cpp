#include "benchmarks/plan/speed.h"

#include <cstdio>

#include "benchmarks/plan/timing.h"
#include "core/plan/solve.h"
#include "tests/plan/random_problem.h"
#include "tests/plan/referee_evenings.h"

namespace lanework::bench {
namespace {

using plan::Problem;

constexpr int kRuns = 5;

struct Size {
  std::size_t drills = 0;
  std::size_t options = 0;
};

Size size_of(const Problem& problem) {
  Size size{problem.drills.size(), 0};
  for (const plan::ProblemDrill& drill : problem.drills) size.options += drill.options.size();
  return size;
}

// Each drill 'times' over: the copies are new to the routine and differ by some seconds.
Problem grown(const Problem& problem, int times, std::uint64_t seed) {
  plan::Dice dice(seed);
  Problem out = problem;
  out.drills.clear();
  for (const plan::ProblemDrill& drill : problem.drills) {
    out.drills.push_back(drill);
    for (int copy = 1; copy < times; ++copy) {
      plan::ProblemDrill another = drill;
      another.routine_line = -1;
      another.left_out = 0;
      another.pinned = false;
      for (plan::Option& option : another.options) {
        option.seconds += dice.roll(0, 20);
        option.changes += 12;
        option.preference += dice.roll(0, 7);
        option.loads[3] = 1;
      }
      out.drills.push_back(std::move(another));
    }
  }
  return out;
}

// A problem with linear prices: every credit of a family is worth so much, no targets.
plan::KernelProblem priced(const Problem& problem, std::uint64_t seed) {
  plan::Dice dice(seed);
  plan::KernelProblem kernel = plan::kernel_problem(problem, {});
  for (plan::KernelGroup& group : kernel.groups) {
    const int worth = dice.roll(50, 500);
    group.reached_cost = {0, 0};
    for (int d = group.first; d < group.last; ++d) {
      plan::KernelDrill& drill = kernel.drills[static_cast<std::size_t>(d)];
      drill.skip_cost = 0;
      for (plan::KernelOption& option : drill.options) {
        option.cost = dice.roll(0, 200) - static_cast<double>(worth) * option.credits;
        option.credits = 1;
      }
    }
  }
  plan::set_prices(kernel, {});
  return kernel;
}

std::vector<double> time_kernels(const std::vector<Problem>& problems) {
  plan::KernelWorkspace workspace;
  std::vector<double> out;
  for (std::size_t i = 0; i < problems.size(); ++i) {
    const plan::KernelProblem kernel = priced(problems[i], i + 1);
    out.push_back(median_seconds(kRuns, [&] { return plan::solve_kernel(kernel, workspace); }));
  }
  return out;
}

std::vector<Problem> draw(int count, plan::Drawn kind) {
  std::vector<Problem> out;
  for (int seed = 1; seed <= count; ++seed) {
    out.push_back(plan::draw_evening(static_cast<std::uint64_t>(seed), kind).problem);
  }
  return out;
}

}  // namespace

void time_hardest(int count) {
  plan::KernelWorkspace workspace;
  std::vector<double> seconds;
  int in_state = 0;
  Size largest;
  for (const Problem& problem : draw(count, plan::Drawn::kHardest)) {
    const std::optional<plan::Solution> solution = plan::solve(problem, workspace);
    if (solution) {
      bool any = false;
      for (const bool load : solution->in_state) any = any || load;
      in_state += any ? 1 : 0;
    }
    seconds.push_back(median_seconds(kRuns, [&] { return plan::solve(problem, workspace); }));
    if (size_of(problem).options > largest.options) largest = size_of(problem);
  }
  std::printf(
      "The whole catalogue, free composition, up to %zu drills and %zu options; a load had to be in the state "
      "in %d of %d:\n",
      largest.drills, largest.options, in_state, count);
  print_times("Lanework, one session, redos apart", seconds);
  print_aim("median", quantile(seconds, 0.5), 5);
  print_aim("99 %", quantile(seconds, 0.99), 50);
  print_aim("worst", quantile(seconds, 1), 250);
}

void time_pricing(int count) {
  const std::vector<double> ordinary = time_kernels(draw(count, plan::Drawn::kOrdinary));
  print_times("Linear prices, the routine's drills", ordinary);
  print_aim("median", quantile(ordinary, 0.5), 0.3);
  const std::vector<double> whole = time_kernels(draw(count, plan::Drawn::kHardest));
  print_times("Linear prices, the whole catalogue", whole);
  print_aim("median", quantile(whole, 0.5), 0.3);
}

void time_growth(int count) {
  plan::KernelWorkspace workspace;
  for (const int times : {1, 10}) {
    std::vector<double> seconds;
    int number = 0;
    for (const Problem& problem : draw(count, plan::Drawn::kHardest)) {
      const Problem larger = grown(problem, times, static_cast<std::uint64_t>(++number));
      seconds.push_back(median_seconds(1, [&] { return plan::solve(larger, workspace); }));
    }
    print_times(times == 1 ? "Growth: drills as they are" : "Growth: ten times the drills", seconds);
  }
}

}  // namespace lanework::bench
