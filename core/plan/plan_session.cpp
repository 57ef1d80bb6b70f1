#include "core/plan/plan_session.h"

#include <algorithm>

#include "core/clock/clock.h"
#include "core/plan/availability.h"
#include "core/plan/build_problem.h"
#include "core/plan/explain.h"
#include "core/plan/infeasible.h"

namespace lanework::plan {
namespace {

constexpr int kMostRedos = 3;

// The routine as far as it can be done here: where the first margin comes from.
session::Session open_routine(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
                              const session::Evening& evening) {
  session::Session out;
  for (const catalogue::RoutineLine& line : routine.lines) {
    const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(line.drill)];
    if (barred_because(drill, line.rung, evening).empty()) {
      out.items.push_back({line.drill, line.rung, line.dose, {}, {}, {}});
    }
  }
  return out;
}

class MarginSearch {
 public:
  MarginSearch(Plan& plan, const catalogue::Catalogue& catalogue, const session::Evening& evening,
               KernelWorkspace& workspace)
      : plan_(plan), catalogue_(catalogue), evening_(evening), workspace_(workspace) {}

  // Solves with a margin, takes the answer's own spread, and sets the margin anew, at most three times. The
  // best session that keeps its own margin is taken.
  void run(Seconds routine_margin) {
    Seconds margin = possible_margin(routine_margin);
    Seconds largest = margin;
    for (int redo = 0;; ++redo) {
      const std::optional<Solution> solution = solve_with(margin);
      if (!solution) break;
      plan_.redos = redo;
      const session::Session session = session_of(plan_.problem, solution->choice, catalogue_, evening_);
      const Seconds needed = own_margin(session);
      const bool keeps = session.planned + needed <= evening_.slot;
      if (keeps) accept(*solution, session, margin);
      largest = std::max(largest, needed);
      if (redo == kMostRedos || (keeps && (needed >= margin || costless(*solution)))) break;
      margin = needed;
    }
    if (plan_.outcome == Outcome::kOptimal) {
      plan_.problem.budget = budget_for(plan_.margin);
      return;
    }
    plan_.margin = largest;
    const std::optional<Solution> solution = solve_with(largest);
    if (solution) accept(*solution, session_of(plan_.problem, solution->choice, catalogue_, evening_), largest);
  }

 private:
  Plan& plan_;
  const catalogue::Catalogue& catalogue_;
  const session::Evening& evening_;
  KernelWorkspace& workspace_;

  [[nodiscard]] int budget_for(Seconds margin) const {
    return static_cast<int>((evening_.slot - margin).count) - plan_.problem.gathering;
  }
  std::optional<Solution> solve_with(Seconds margin) {
    plan_.problem.budget = budget_for(margin);
    return solve(plan_.problem, workspace_);
  }
  [[nodiscard]] Seconds own_margin(const session::Session& session) const {
    return clock::moment_margin(clock::session_lines(session, catalogue_, evening_));
  }
  // A short session varies less than the whole routine: where the routine's margin leaves no room for
  // anything, the margin of what would fit without one is tried instead.
  Seconds possible_margin(Seconds routine_margin) {
    if (solve_with(routine_margin)) return routine_margin;
    const std::optional<Solution> bare = solve_with(Seconds(0));
    if (!bare) return routine_margin;
    return std::min(routine_margin, own_margin(session_of(plan_.problem, bare->choice, catalogue_, evening_)));
  }
  static bool costless(const Solution& solution) {
    const Objective& o = solution.evaluation.objective;
    return o.uncovered + o.shortfall + o.changes == 0;
  }
  void accept(const Solution& solution, const session::Session& session, Seconds margin) {
    const bool better = plan_.outcome != Outcome::kOptimal ||
                        packed(solution.evaluation.objective) < packed(plan_.solution.evaluation.objective);
    if (!better) return;
    plan_.outcome = Outcome::kOptimal;
    plan_.solution = solution;
    plan_.session = session;
    plan_.margin = margin;
  }
};

}  // namespace

session::Session session_of(const Problem& problem, const Choice& choice, const catalogue::Catalogue& catalogue,
                            const session::Evening& evening) {
  session::Session out;
  for (std::size_t i = 0; i < problem.drills.size(); ++i) {
    if (choice[i] < 0) continue;
    const Option& option = problem.drills[i].options[static_cast<std::size_t>(choice[i])];
    out.items.push_back({problem.drills[i].drill, option.rung, option.dose, {}, {}, {}});
  }
  clock::lay_out(out, catalogue, evening);
  return out;
}

Plan plan_session(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
                  const session::Evening& evening, KernelWorkspace& workspace) {
  Plan plan;
  plan.problem = build_problem(catalogue, routine, evening, evening.slot);
  const Seconds margin =
      clock::moment_margin(clock::session_lines(open_routine(catalogue, routine, evening), catalogue, evening));
  MarginSearch(plan, catalogue, evening, workspace).run(margin);
  if (plan.outcome == Outcome::kInfeasible) {
    plan.conflict = find_conflict(plan.problem, plan.margin, catalogue, evening, workspace);
    return plan;
  }
  explain(plan, catalogue, routine, evening, workspace);
  return plan;
}

}  // namespace lanework::plan
