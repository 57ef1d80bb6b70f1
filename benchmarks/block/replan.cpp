#include "benchmarks/block/replan.h"

#include <algorithm>

#include "benchmarks/block/squads.h"
#include "benchmarks/plan/timing.h"

namespace lanework::bench {

void measure_replan(int squads) {
  std::vector<double> seconds;
  for (int seed = 1; seed <= squads; ++seed) {
    block::Outline outline = squad_of_the_set(static_cast<std::uint64_t>(seed));
    // An evening of the third week is five minutes shorter.
    session::Evening& evening = outline.evenings[outline.evenings.size() / 2];
    evening.slot = Seconds(std::max<std::int64_t>(5 * 60, evening.slot.count - 5 * 60));
    plan::KernelWorkspace workspace;
    const double from = thread_seconds();
    const block::Built built = block::build_problem(outline, workspace);
    block::solve(built.problem, {});
    seconds.push_back(thread_seconds() - from);
  }
  print_times("Replan, one evening changed (all solved anew)", seconds);
  print_aim("median", quantile(seconds, 0.5), 150);
  print_aim("worst", quantile(seconds, 1), 150);
}

}  // namespace lanework::bench
