#include "core/plan/plan_session.h"

#include "core/clock/clock.h"
#include "core/plan/availability.h"
#include "core/plan/build_problem.h"
#include "core/plan/explain.h"
#include "core/plan/infeasible.h"
#include "core/plan/keep_slot.h"

namespace lanework::plan {
namespace {

// The routine as far as it can be done here: where the first margin comes from.
session::Session open_routine(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
                              const session::Evening& evening) {
  session::Session out;
  for (const catalogue::RoutineLine& line : routine.lines) {
    const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(line.drill)];
    if (!barred_because(drill, line.rung, evening)) {
      out.items.push_back({line.drill, line.rung, line.dose, {}, {}, {}, {}});
    }
  }
  return out;
}

}  // namespace

Plan plan_session(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
                  const session::Evening& evening, KernelWorkspace& workspace) {
  Plan plan;
  if (!evening.no_session.empty()) {
    WayOut another;
    another.another_day = true;
    plan.conflict = {{NoSession{evening.no_session}}, {std::move(another)}};
    return plan;
  }
  plan.problem = build_problem(catalogue, routine, evening, evening.slot);
  const Seconds first_margin =
      clock::moment_margin(clock::session_lines(open_routine(catalogue, routine, evening), catalogue, evening));
  SlotSearch search = keep_slot(plan.problem, evening.slot, first_margin, catalogue, evening, workspace);
  plan.margin = search.margin;
  plan.redos = search.redos;
  plan.problem.budget = budget_for(plan.problem, evening.slot, plan.margin);
  if (!search.kept) {
    plan.conflict = find_conflict(plan.problem, first_margin, catalogue, evening, workspace);
    return plan;
  }
  plan.outcome = Outcome::kOptimal;
  plan.solution = std::move(search.kept->solution);
  plan.session = std::move(search.kept->session);
  explain(plan, catalogue, routine, evening, workspace);
  return plan;
}

}  // namespace lanework::plan
