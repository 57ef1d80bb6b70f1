#include "core/plan/keep_slot.h"

#include <algorithm>

#include "core/clock/clock.h"

namespace lanework::plan {
namespace {

constexpr int kMostRedos = 3;

class MarginSearch {
 public:
  MarginSearch(Problem problem, Seconds slot, const catalogue::Catalogue& catalogue, const session::Evening& evening,
               KernelWorkspace& workspace)
      : problem_(std::move(problem)), slot_(slot), catalogue_(catalogue), evening_(evening), workspace_(workspace) {}

  // The best session that keeps its own margin is taken.
  SlotSearch run(Seconds first_margin) {
    Seconds margin = possible_margin(first_margin);
    Seconds largest = margin;
    for (int redo = 0;; ++redo) {
      const std::optional<Solution> solution = solve_with(margin);
      if (!solution) break;
      out_.redos = redo;
      const session::Session session = session_of(problem_, solution->choice, catalogue_, evening_);
      const Seconds needed = own_margin(session);
      const bool keeps = session.planned + needed <= slot_;
      if (keeps) accept(*solution, session, margin);
      largest = std::max(largest, needed);
      if (redo == kMostRedos || (keeps && (needed >= margin || costless(*solution)))) break;
      margin = needed;
    }
    if (!out_.kept) {
      const std::optional<Solution> solution = solve_with(largest);
      if (solution) accept(*solution, session_of(problem_, solution->choice, catalogue_, evening_), largest);
    }
    out_.margin = out_.kept ? out_.kept->margin : largest;
    return std::move(out_);
  }

 private:
  Problem problem_;
  Seconds slot_;
  const catalogue::Catalogue& catalogue_;
  const session::Evening& evening_;
  KernelWorkspace& workspace_;
  SlotSearch out_;

  std::optional<Solution> solve_with(Seconds margin) {
    problem_.budget = budget_for(problem_, slot_, margin);
    return solve(problem_, workspace_);
  }
  [[nodiscard]] Seconds own_margin(const session::Session& session) const {
    return clock::moment_margin(clock::session_lines(session, catalogue_, evening_));
  }
  // A short session varies less than the whole routine: where the routine's margin leaves no room for
  // anything, the margin of what would fit without one is tried instead.
  Seconds possible_margin(Seconds first_margin) {
    if (solve_with(first_margin)) return first_margin;
    const std::optional<Solution> bare = solve_with(Seconds(0));
    if (!bare) return first_margin;
    return std::min(first_margin, own_margin(session_of(problem_, bare->choice, catalogue_, evening_)));
  }
  static bool costless(const Solution& solution) {
    const Objective& o = solution.evaluation.objective;
    return o.uncovered + o.shortfall + o.changes == 0;
  }
  void accept(const Solution& solution, const session::Session& session, Seconds margin) {
    const bool better =
        !out_.kept || packed(solution.evaluation.objective) < packed(out_.kept->solution.evaluation.objective);
    if (better) out_.kept = KeptSlot{solution, session, margin};
  }
};

}  // namespace

int budget_for(const Problem& problem, Seconds slot, Seconds margin) {
  return static_cast<int>((slot - margin).count) - problem.gathering - problem.breaks;
}

session::Session session_of(const Problem& problem, const Choice& choice, const catalogue::Catalogue& catalogue,
                            const session::Evening& evening) {
  session::Session out;
  for (std::size_t i = 0; i < problem.drills.size(); ++i) {
    if (choice[i] < 0) continue;
    const Option& option = problem.drills[i].options[static_cast<std::size_t>(choice[i])];
    out.items.push_back({problem.drills[i].drill, option.rung, option.dose, {}, {}, {}, {}});
  }
  clock::lay_out(out, catalogue, evening);
  return out;
}

SlotSearch keep_slot(Problem problem, Seconds slot, Seconds first_margin, const catalogue::Catalogue& catalogue,
                     const session::Evening& evening, KernelWorkspace& workspace) {
  return MarginSearch(std::move(problem), slot, catalogue, evening, workspace).run(first_margin);
}

}  // namespace lanework::plan
