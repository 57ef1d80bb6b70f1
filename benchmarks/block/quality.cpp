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

// One week alone, its sets given: the sessions of the rest of the block stay as they are.
struct WeekAlone {
  block::Problem problem;
  block::Plan plan;
};

WeekAlone week_alone(const block::Restricted& restricted, const block::Plan& plan, std::size_t w) {
  WeekAlone out{restricted.problem, {}};
  block::Problem& p = out.problem;
  p.sessions.clear();
  p.close.clear();
  p.weeks = {restricted.problem.weeks[w]};
  p.weeks.front().spell = 0;
  p.spells = 1;
  out.plan.sets = {plan.sets.front()};
  for (std::size_t s = 0; s < restricted.problem.sessions.size(); ++s) {
    const block::Session& session = restricted.problem.sessions[s];
    for (std::size_t d = 0; d < p.drills.size() && session.week < static_cast<int>(w); ++d) {
      if (plan.choice[s][d] >= 0) p.drills[d].unknown = false;
    }
    if (session.week != static_cast<int>(w)) continue;
    p.sessions.push_back(session);
    p.sessions.back().week = p.sessions.back().spell = 0;
    out.plan.choice.push_back(plan.choice[s]);
  }
  return out;
}

// Does one minute more for each session of the week give a better plan? The same search without it goes on as long,
// so that what it finds by itself does not count.
bool minute_raises(const WeekAlone& week) {
  constexpr block::SessionEffort kEffort{400, 40'000};
  block::PriceDescent prices(week.problem);
  prices.descend(block::Work{}.rounds_of_sets, 0);
  const auto search = [&](const block::Problem& problem, const block::Plan& start) {
    return block::search_sessions(problem, start, prices.guide(), kEffort, 1);
  };
  const block::Plan settled = search(week.problem, week.plan).plan;
  block::Problem longer = week.problem;
  for (block::Session& session : longer.sessions) session.budget += kStepsAMinute;
  return search(longer, settled).value > search(week.problem, settled).value;
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
    const block::Plan plan = restricted.narrowed(squad.answer.plan);
    for (std::size_t w = 0; w < restricted.problem.weeks.size(); ++w) {
      const WeekAlone week = week_alone(restricted, plan, w);
      if (week.problem.sessions.empty()) continue;
      ++weeks;
      raised += minute_raises(week) ? 1 : 0;
    }
  }
  const int percent = weeks == 0 ? 0 : 100 * raised / weeks;
  std::printf(
      "Time binds: one more minute a session raises the value in %d of %d squad-weeks (%d %%; at least 70 %%)%s\n",
      raised, weeks, percent, percent >= 70 ? "" : ": TOO FEW");
  return percent >= 70;
}

}  // namespace lanework::bench
