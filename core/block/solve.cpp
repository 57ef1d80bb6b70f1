#include "core/block/solve.h"

#include <algorithm>

#include "core/block/price_descent.h"
#include "core/block/restrict.h"
#include "core/block/search.h"

namespace lanework::block {
namespace {

class BlockSolver {
 public:
  BlockSolver(const Problem& problem, const Work& work, std::uint64_t seed, const Progress& progress)
      : p_(problem), work_(work), seed_(seed), progress_(progress), prices_(problem) {
    answer_.plan = empty_plan(problem);
  }

  // Prices first, then sets, then the sessions of the best few sets at prices of their own.
  Answer run() {
    constexpr int kParts = 8;
    for (int part = 0; part < kParts && goes_on(0.5 * part / kParts); ++part) {
      prices_.descend(work_.rounds / kParts, answer_.value);
      if (part == 2) find_sets();
    }
    find_sets();
    rank_candidates();
    for (std::size_t i = 0; i < candidates_.size() && static_cast<int>(i) < work_.sets_tried; ++i) {
      if (!goes_on(0.5 + 0.5 * static_cast<double>(i) / work_.sets_tried)) break;
      work_out(candidates_[i].plan, i);
    }
    answer_.bound_fine = prices_.bound_fine();
    answer_.rounds = prices_.rounds();
    answer_.prices = prices_.prices();
    return std::move(answer_);
  }

 private:
  const Problem& p_;
  const Work work_;
  const std::uint64_t seed_;
  const Progress& progress_;
  PriceDescent prices_;
  std::vector<Found> candidates_;
  Answer answer_;
  bool stopped_ = false;

  bool goes_on(double share) {
    stopped_ = stopped_ || (progress_ && !progress_(share));
    return !stopped_;
  }

  void find_sets() {
    std::vector<Sets> starts = prices_.starts();
    starts.push_back(empty_plan(p_).sets);
    candidates_ = search_sets(p_, starts, prices_.guide(), work_.set_moves);
    for (const Found& found : candidates_) accept(found.plan, found.value, found.feasible);
  }

  // By what is left of the bound when the sets are given, after a few rounds of prices.
  void rank_candidates() {
    struct Ranked {
      std::int64_t bound;
      Found found;
    };
    std::vector<Ranked> ranked;
    for (Found& found : candidates_) {
      if (static_cast<int>(ranked.size()) == work_.sets_ranked) break;
      const Restricted restricted = restrict_to(p_, found.plan.sets);
      PriceDescent prices(restricted.problem, prices_, restricted.drill_of);
      prices.descend(work_.rounds_to_rank, found.value);
      const Points swaps =
          evaluate(p_, found.plan).value - evaluate(restricted.problem, restricted.narrowed(found.plan)).value;
      ranked.push_back({prices.bound_fine() + swaps * kFine, std::move(found)});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& a, const Ranked& b) { return a.bound > b.bound; });
    candidates_.clear();
    for (Ranked& one : ranked) candidates_.push_back(std::move(one.found));
  }

  void work_out(const Plan& plan, std::size_t which) {
    const Restricted restricted = restrict_to(p_, plan.sets);
    PriceDescent prices(restricted.problem, prices_, restricted.drill_of);
    prices.descend(work_.rounds_of_sets, 0);
    const Found found = search_sessions(restricted.problem, restricted.narrowed(plan), prices.guide(),
                                        {work_.session_moves, work_.drill_moves}, seed_ + which);
    if (!found.feasible) return;
    const Plan wide = restricted.widened(found.plan, plan.sets, p_.drills.size());
    const Evaluation evaluation = evaluate(p_, wide);
    accept(wide, evaluation.value, evaluation.broken.empty());
  }

  void accept(const Plan& plan, Points value, bool feasible) {
    if (!feasible || (answer_.feasible && value <= answer_.value)) return;
    answer_.plan = plan;
    answer_.value = value;
    answer_.feasible = true;
  }
};

}  // namespace

int gap_ten_thousandths(const Answer& answer) {
  // Of the bound as it is told, in whole points, so that a reader comes to the same.
  const Points bound = bound_points(answer);
  if (bound <= 0) return 0;
  return static_cast<int>(((bound - answer.value) * 10000 + bound - 1) / bound);
}

Points bound_points(const Answer& answer) { return (answer.bound_fine + kFine - 1) / kFine; }

Answer solve(const Problem& problem, const Work& work, std::uint64_t seed, const Progress& progress) {
  return BlockSolver(problem, work, seed, progress).run();
}

}  // namespace lanework::block
