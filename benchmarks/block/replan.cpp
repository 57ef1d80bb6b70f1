#include "benchmarks/block/replan.h"

#include <algorithm>
#include <cstdio>

#include "benchmarks/block/squads.h"
#include "benchmarks/plan/timing.h"
#include "core/block/replan.h"
#include "tests/block/standing_of.h"

namespace lanework::bench {
namespace {

struct Case {
  block::Outline outline;  // with the plan that stands, one evening of the third week five minutes shorter
};

Case shortened(std::uint64_t seed) {
  Case out{squad_of_the_set(seed)};
  plan::KernelWorkspace workspace;
  const block::Built built = block::build_problem(out.outline, workspace);
  const block::Answer answer = block::solve(built.problem, {});
  block::Rolling rolling;
  rolling.today = out.outline.monday;
  rolling.standing = block::standing_of(out.outline, built, answer.plan);
  session::Evening& evening = out.outline.evenings[out.outline.evenings.size() / 2];
  evening.slot = Seconds(std::max<std::int64_t>(5 * 60, evening.slot.count - 5 * 60));
  out.outline.rolling = std::move(rolling);
  return out;
}

}  // namespace

void measure_replan(int squads) {
  std::vector<double> anew;
  std::vector<double> on;
  std::vector<double> gaps;
  int sessions = 0;
  int sound = 0;
  for (int seed = 1; seed <= squads; ++seed) {
    const Case changed = shortened(static_cast<std::uint64_t>(seed));
    plan::KernelWorkspace workspace;
    const double from = thread_seconds();
    const block::Built built = block::build_problem(changed.outline, workspace);
    const block::Replanned replanned = block::replan(changed.outline, built, {});
    const double between = thread_seconds();
    block::Outline fresh = changed.outline;
    fresh.rolling.reset();
    plan::KernelWorkspace other;
    const double again = thread_seconds();
    block::solve(block::build_problem(fresh, other).problem, {});
    anew.push_back(thread_seconds() - again);
    on.push_back(between - from);
    gaps.push_back(block::gap_ten_thousandths(replanned.answer) / 100.0);
    for (std::size_t s = 0; s < built.problem.sessions.size(); ++s)
      sessions += replanned.answer.plan.choice[s] != replanned.standing.choice[s] ? 1 : 0;
    sound += replanned.answer.feasible ? 1 : 0;
  }
  print_times("Replan, one evening five minutes shorter: all solved anew", anew);
  print_times("Replan, one evening five minutes shorter: planned on from what stands", on);
  print_aim("median", 1000 * quantile(on, 0.5), 150, "ms");
  print_aim("worst", 1000 * quantile(on, 1), 150, "ms");
  std::printf(
      "  sound: %d of %d; sessions that change: %.1f a squad; gap to the best with these sets: median %.2f %%, worst "
      "%.2f %%\n",
      sound, squads, static_cast<double>(sessions) / squads, quantile(gaps, 0.5), quantile(gaps, 1));
}

}  // namespace lanework::bench
