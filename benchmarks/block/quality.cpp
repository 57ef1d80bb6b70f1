#include "benchmarks/block/quality.h"

#include <algorithm>
#include <cstdio>

#include "benchmarks/plan/timing.h"
#include "core/block/price_descent.h"
#include "core/block/restrict.h"
#include "core/block/search.h"

namespace lanework::bench {
namespace {

constexpr int kThreads = 2;
constexpr int kStepsAMinute = 60 / block::kStepSeconds;
constexpr double kMoreWork = 6;

struct Gaps {
  std::vector<double> percent;
  int infeasible = 0;
  int within_one = 0;
};

Gaps gaps_of(const std::vector<SolvedSquad>& squads) {
  Gaps gaps;
  for (const SolvedSquad& squad : squads) {
    if (!squad.answer.feasible) {
      ++gaps.infeasible;
      continue;
    }
    gaps.percent.push_back(block::gap_ten_thousandths(squad.answer) / 100.0);
    gaps.within_one += gaps.percent.back() <= 1 ? 1 : 0;
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
  std::printf("  gap: mean %.2f %%, median %.2f, 90 %% %.2f, worst %.2f; at most 1 %%: %d of %zu squads\n",
              mean(gaps.percent), quantile(gaps.percent, 0.5), quantile(gaps.percent, 0.9), quantile(gaps.percent, 1),
              gaps.within_one, squads.size());
}

std::vector<SolvedSquad> solve_and_keep(int count, const block::Work& work, Cost& cost) {
  std::vector<SolvedSquad> squads(static_cast<std::size_t>(count));
  cost = solve_set(count, kThreads, work, [&](std::size_t i, SolvedSquad squad) { squads[i] = std::move(squad); });
  return squads;
}

// The value with the sets of the plan kept and its sessions worked on again.
block::Points settled(const block::Problem& problem, const block::Plan& plan, const block::Guide& guide) {
  const block::SessionEffort effort{300, 30'000};
  return block::search_sessions(problem, plan, guide, effort, 1).value;
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
  const std::vector<SolvedSquad> more = solve_and_keep(count, scaled(kMoreWork), more_cost);
  print_set("Six times the work", more, more_cost);
  const std::vector<double> percent = gaps_of(more).percent;
  if (!percent.empty()) print_aim("worst gap", quantile(percent, 1), 1, "%");
  return squads;
}

bool time_binds(const std::vector<SolvedSquad>& squads) {
  int raised = 0;
  int weeks = 0;
  for (const SolvedSquad& squad : squads) {
    const block::Restricted restricted = block::restrict_to(squad.built.problem, squad.answer.plan.sets);
    block::PriceDescent prices(restricted.problem);
    prices.descend(block::Work{}.rounds_of_sets, 0);
    const block::Plan plan = restricted.narrowed(squad.answer.plan);
    // The same search without the minute: what it finds by itself does not count.
    const block::Points now = settled(restricted.problem, plan, prices.guide());
    for (std::size_t w = 0; w < restricted.problem.weeks.size(); ++w) {
      block::Problem longer = restricted.problem;
      bool any = false;
      for (block::Session& session : longer.sessions) {
        if (session.week != static_cast<int>(w)) continue;
        session.budget += kStepsAMinute;
        any = true;
      }
      if (!any) continue;
      ++weeks;
      raised += settled(longer, plan, prices.guide()) > now ? 1 : 0;
    }
  }
  const int percent = weeks == 0 ? 0 : 100 * raised / weeks;
  std::printf(
      "Time binds: one more minute a session raises the value in %d of %d squad-weeks (%d %%; at least 70 %%)%s\n",
      raised, weeks, percent, percent >= 70 ? "" : ": TOO FEW");
  return percent >= 70;
}

}  // namespace lanework::bench
