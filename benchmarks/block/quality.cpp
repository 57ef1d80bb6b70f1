#include "benchmarks/block/quality.h"

#include <algorithm>
#include <cstdio>

#include "benchmarks/plan/timing.h"
#include "core/block/week_solver.h"

namespace lanework::bench {
namespace {

constexpr int kThreads = 2;
constexpr int kStepsAMinute = 60 / block::kStepSeconds;

// What two cores do in about a minute: squads above 1 % are worked on, fourteen times as long as the worst are
// otherwise, and the weeks of sets that stay alone with more effort.
block::Work minute_of_work() {
  block::Work work;
  work.far = work.farther = 100;
  work.last_splits = 2200;
  work.thorough.splits = 60;
  return work;
}

struct Gaps {
  std::vector<double> percent;
  int infeasible = 0;
  int within_one = 0;
  std::size_t worst = 0;  // number of the squad, from 1
};

Gaps gaps_of(const std::vector<SolvedSquad>& squads) {
  Gaps gaps;
  double most = -1;
  for (std::size_t i = 0; i < squads.size(); ++i) {
    if (!squads[i].answer.feasible) {
      ++gaps.infeasible;
      continue;
    }
    const double gap = block::gap_ten_thousandths(squads[i].answer) / 100.0;
    gaps.percent.push_back(gap);
    gaps.within_one += gap <= 1 ? 1 : 0;
    if (gap > most) gaps.worst = i + 1;
    most = std::max(most, gap);
  }
  return gaps;
}

double mean(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return values.empty() ? 0 : sum / static_cast<double>(values.size());
}

void print_set(const char* name, const std::vector<SolvedSquad>& squads, const Cost& cost) {
  const Gaps gaps = gaps_of(squads);
  std::vector<double> build;
  std::vector<double> solve;
  for (const SolvedSquad& squad : squads) {
    build.push_back(squad.build_seconds);
    solve.push_back(squad.solve_seconds);
  }
  std::printf("%s: %zu squads, %d threads: %.1f s on the wall, %.1f s of processor\n", name, squads.size(), kThreads,
              cost.wall_seconds, cost.processor_seconds);
  print_times("  problem built, a squad", build);
  print_times("  problem solved, a squad", solve);
  if (gaps.infeasible > 0) std::printf("  NO PLAN for %d squads\n", gaps.infeasible);
  if (gaps.percent.empty()) return;
  std::printf("  gap: mean %.2f %%, median %.2f, 90 %% %.2f, worst %.2f (squad %zu); at most 1 %%: %d of %zu squads\n",
              mean(gaps.percent), quantile(gaps.percent, 0.5), quantile(gaps.percent, 0.9), quantile(gaps.percent, 1),
              gaps.worst, gaps.within_one, squads.size());
}

std::vector<SolvedSquad> solve_and_keep(int count, const block::Work& work, Cost& cost) {
  std::vector<SolvedSquad> squads(static_cast<std::size_t>(count));
  cost = solve_set(count, kThreads, work, [&](std::size_t i, SolvedSquad squad) { squads[i] = std::move(squad); });
  return squads;
}

// Does one minute more for each session of the week give a better one, its set given?
bool minute_raises(const block::Problem& problem, const std::vector<char>& set, std::size_t week) {
  constexpr block::WeekEffort kEffort{
      .rounds = 60, .splits = 30, .rounds_of_a_half = 12, .list_steps = 200'000, .joins = 200'000};
  const std::vector<char> known(problem.drills.size(), 1);
  const auto worth = [&](const block::Problem& of) {
    return block::WeekSolver(of).solve(week, set, known, false, kEffort);
  };
  block::Problem longer = problem;
  for (block::Session& session : longer.sessions) session.budget += kStepsAMinute;
  return worth(longer).value > worth(problem).value;
}

}  // namespace

std::vector<SolvedSquad> measure_quality(int count) {
  Cost cost;
  const std::vector<SolvedSquad> squads = solve_and_keep(count, {}, cost);
  print_set("Default work", squads, cost);
  const Gaps gaps = gaps_of(squads);
  if (!gaps.percent.empty()) {
    print_aim("worst gap", quantile(gaps.percent, 1), 2.5, "%");
    print_aim("mean gap", mean(gaps.percent), 1.3, "%");
  }
  print_aim("60 squads on 2 cores, wall", cost.wall_seconds * 60 / count, 10, "s");
  print_aim("60 squads, half the processor time", cost.processor_seconds * 30 / count, 10, "s");

  Cost more_cost;
  const std::vector<SolvedSquad> more = solve_and_keep(count, minute_of_work(), more_cost);
  print_set("What a minute buys", more, more_cost);
  const std::vector<double> percent = gaps_of(more).percent;
  if (!percent.empty()) print_aim("worst gap", quantile(percent, 1), 1, "%");
  print_aim("60 squads on 2 cores, wall", more_cost.wall_seconds * 60 / count, 60, "s");
  return squads;
}

bool time_binds(const std::vector<SolvedSquad>& squads) {
  int raised = 0;
  int weeks = 0;
  for (const SolvedSquad& squad : squads) {
    const block::Problem& problem = squad.built.problem;
    const block::WeekSolver solver(problem);
    for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
      if (solver.sessions_of(w).empty()) continue;
      ++weeks;
      const auto& set = squad.answer.plan.sets[static_cast<std::size_t>(problem.weeks[w].spell)];
      raised += minute_raises(problem, set, w) ? 1 : 0;
    }
  }
  const int percent = weeks == 0 ? 0 : 100 * raised / weeks;
  std::printf(
      "Time binds: one more minute a session raises the value in %d of %d squad-weeks (%d %%; at least 70 %%)%s\n",
      raised, weeks, percent, percent >= 70 ? "" : ": TOO FEW");
  return percent >= 70;
}

}  // namespace lanework::bench
