#include "core/block/solve.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/block/branching.h"
#include "core/block/first_sets.h"
#include "core/block/free_sets.h"
#include "core/block/set_limits.h"
#include "core/block/set_worth.h"

namespace lanework::block {
namespace {

constexpr Points kNone = INT64_MIN / (2 * kFine);

class BlockSolver {
 public:
  BlockSolver(const Problem& problem, const Work& work, const Progress& progress)
      : p_(problem),
        work_(work),
        progress_(progress),
        worth_(problem),
        firsts_(first_sets(problem, work.first_sets)),
        branching_(problem, problem.spells - 1) {
    branching_.worth_at_most = [this](const Sets& sets) { return worth_with(sets); };
  }

  Answer run() {
    answer_.plan = empty_plan(p_);
    // One spell whose set is the house routine: nothing is open.
    if (p_.spells == 1 && p_.first_swaps == 0) {
      try_sets(firsts_.sets);
      answer_.bound_fine = worth_with(firsts_.sets);
    } else {
      search();
      answer_.bound_fine = branching_.bound_fine();
    }
    take_plan();
    answer_.rounds = branching_.rounds();
    return std::move(answer_);
  }

 private:
  const Problem& p_;
  const Work work_;
  const Progress& progress_;
  SetWorth worth_;
  FirstSets firsts_;
  Branching branching_;
  std::set<Sets> tried_;
  struct Candidate {
    Points value;  // swaps paid
    Sets sets;
  };
  std::vector<Candidate> candidates_;  // the best first
  Answer answer_;
  bool stopped_ = false;

  bool goes_on(double share) {
    stopped_ = stopped_ || (progress_ && !progress_(share));
    return !stopped_;
  }
  [[nodiscard]] Points known() const { return candidates_.empty() ? kNone : candidates_.front().value; }

  void search() {
    open_parts();
    improve_sets();
    const int more = work_.splits + work_.more_splits;
    const int most = more + work_.last_splits;
    for (int k = 0; k < most && goes_on(0.5 + 0.5 * k / most); ++k) {
      if (gap() <= (k < work_.splits ? work_.near : k < more ? work_.far : work_.farther)) break;
      if (!branching_.split(work_.split_rounds, known())) break;
      if (try_sets(branching_.wished())) improve_sets();
    }
  }

  [[nodiscard]] int gap() const {
    Answer now;
    now.value = known();
    now.bound_fine = branching_.bound_fine();
    return gap_ten_thousandths(now);
  }

  // The open spell after each first set, the most promising first; a quick bound is enough for those far below.
  void open_parts() {
    if (!firsts_.whole) add_free_sets();
    if (p_.spells == 1) {
      branching_.open({}, 0, goes_on(0) ? work_.first_rounds : 1);
      try_sets(branching_.wished());
      for (const std::vector<char>& first : firsts_.sets) try_sets({first});
      return;
    }
    struct First {
      std::int64_t bound;
      const std::vector<char>* set;
    };
    std::vector<First> firsts;
    const WeekEffort& effort = firsts_.sets.size() == 1 ? work_.thorough : work_.week;
    for (const std::vector<char>& set : firsts_.sets) firsts.push_back({worth_.of(0, set, effort).bound_fine, &set});
    std::stable_sort(firsts.begin(), firsts.end(), [](const First& a, const First& b) { return a.bound > b.bound; });
    for (std::size_t k = 0; k < firsts.size(); ++k) {
      const bool on = goes_on(0.5 * static_cast<double>(k) / static_cast<double>(firsts.size()));
      const int rounds = !on ? 1 : k == 0 ? work_.first_rounds : work_.split_rounds;
      branching_.open({*firsts[k].set}, firsts[k].bound, rounds);
      try_sets(branching_.wished());
      try_sets({*firsts[k].set, *firsts[k].set});
    }
    if (!firsts_.whole) return;  // everything is bounded
    for (const std::size_t closed : firsts_.closed) branching_.leave(bound_beside(p_, closed, work_.first_rounds));
  }

  void add_free_sets() {
    FreeSets free = free_sets(p_, work_, [this](double share) { return goes_on(0.3 * share); });
    for (std::vector<char>& set : free.wished) {
      const bool listed = std::find(firsts_.sets.begin(), firsts_.sets.end(), set) != firsts_.sets.end();
      if (!listed && keeps_set_limits(p_, {set})) firsts_.sets.push_back(std::move(set));
    }
    if (p_.spells > 1) branching_.leave(free.bound_fine);
  }

  // What the block is worth with these sets at the most. No split can lower it, so where it is far above the best known
  // its weeks are worked out with more effort.
  std::int64_t worth_with(const Sets& sets) {
    const std::int64_t quick = quick_bound(sets);
    if (quick < (known() + 1) * kFine) return quick;
    try_sets(sets);
    const std::int64_t bound = bound_with(sets, work_.week);
    Answer now;
    now.value = known();
    now.bound_fine = bound;
    return gap_ten_thousandths(now) <= work_.farther ? bound : bound_with(sets, work_.thorough);
  }
  std::int64_t quick_bound(const Sets& sets) {
    std::int64_t bound = -swap_cost(p_, sets) * kFine;
    for (std::size_t p = 0; p + 1 < sets.size(); ++p) bound += worth_.of(p, sets[p], work_.week).bound_fine;
    return bound + worth_.bound(sets.size() - 1, sets.back(), work_.week.rounds);
  }
  std::int64_t bound_with(const Sets& sets, const WeekEffort& effort) {
    std::int64_t bound = -swap_cost(p_, sets) * kFine;
    for (std::size_t p = 0; p < sets.size(); ++p) bound += worth_.of(p, sets[p], effort).bound_fine;
    return bound;
  }

  // True: better than all before.
  bool try_sets(const Sets& sets) {
    if (!keeps_set_limits(p_, sets) || !tried_.insert(sets).second) return false;
    Points value = -swap_cost(p_, sets);
    for (std::size_t p = 0; p < sets.size(); ++p) value += worth_.of(p, sets[p], work_.week).value;
    // What is told of as the best must keep the limits on new drills and on close sessions of two weeks too.
    if (value > known()) value = value_with_all_limits(sets);
    const auto place =
        std::find_if(candidates_.begin(), candidates_.end(), [&](const Candidate& c) { return c.value < value; });
    const bool best = place == candidates_.begin();
    candidates_.insert(place, {value, sets});
    return best;
  }

  Points value_with_all_limits(const Sets& sets) {
    const Evaluation evaluation = evaluate(p_, worth_.plan_of(sets, work_.week));
    return evaluation.broken.empty() ? evaluation.value : kNone;
  }

  struct Swap {
    std::int64_t bound;
    Sets sets;
  };

  // Every single swap of the best sets, ranked by a quick bound; the most promising are worked out.
  void improve_sets() {
    for (int pass = 0; pass < work_.improvements && !candidates_.empty() && !stopped_; ++pass) {
      std::vector<Swap> swaps = ranked_swaps(candidates_.front().sets);
      bool better = false;
      for (std::size_t k = 0; k < swaps.size() && static_cast<int>(k) < work_.worked_out; ++k) {
        if (swaps[k].bound <= known() * kFine) break;
        if (quick_bound(swaps[k].sets) < (known() + 1) * kFine) continue;
        better = try_sets(swaps[k].sets) || better;
      }
      if (!better) return;
    }
  }

  std::vector<Swap> ranked_swaps(const Sets& sets) {
    std::vector<Swap> out;
    const std::size_t last = sets.size() - 1;
    for (std::size_t in = 0; in < p_.drills.size(); ++in) {
      for (std::size_t leaves = 0; leaves < p_.drills.size(); ++leaves) {
        if (family_of(in) != family_of(leaves)) continue;
        rank_swap(sets, last, in, leaves, out);
        // Where first sets are listed, they stay.
        for (std::size_t p = 0; p < last && !firsts_.whole; ++p) rank_swap(sets, p, in, leaves, out);
      }
    }
    if (firsts_.whole && sets.size() == 2) {
      for (const std::vector<char>& first : firsts_.sets) rank_first(sets, first, out);
    }
    std::stable_sort(out.begin(), out.end(), [](const Swap& a, const Swap& b) { return a.bound > b.bound; });
    return out;
  }

  // Another first set, and in the last one what it has otherwise.
  void rank_first(const Sets& sets, const std::vector<char>& first, std::vector<Swap>& out) {
    Sets other = {first, sets.back()};
    for (std::size_t d = 0; d < first.size(); ++d) {
      if (first[d] != sets.front()[d]) other.back()[d] = first[d];
    }
    if (first == sets.front() || !keeps_set_limits(p_, other) || tried_.contains(other)) return;
    const std::int64_t bound = worth_.of(0, first, work_.week).value * kFine +
                               worth_.bound(1, other.back(), work_.ranking_rounds) - swap_cost(p_, other) * kFine;
    out.push_back({bound, std::move(other)});
  }

  // From spell p on, as long as the sets have the one and lack the other.
  void rank_swap(const Sets& sets, std::size_t p, std::size_t in, std::size_t leaves, std::vector<Swap>& out) {
    Sets swapped = sets;
    std::size_t q = p;
    for (; q < sets.size() && sets[q][in] == 0 && sets[q][leaves] != 0; ++q) {
      swapped[q][in] = 1;
      swapped[q][leaves] = 0;
    }
    if (q == p || !keeps_set_limits(p_, swapped) || tried_.contains(swapped)) return;
    std::int64_t bound = -swap_cost(p_, swapped) * kFine;
    for (std::size_t k = 0; k < sets.size(); ++k) {
      const bool changed = k >= p && k < q;
      bound +=
          changed ? worth_.bound(k, swapped[k], work_.ranking_rounds) : worth_.of(k, sets[k], work_.week).value * kFine;
    }
    out.push_back({bound, std::move(swapped)});
  }

  [[nodiscard]] int family_of(std::size_t d) const {
    return p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family;
  }

  // The limits on new drills may make the best sets worth less than the next ones.
  void take_plan() {
    for (const Candidate& candidate : candidates_) {
      if (answer_.feasible && candidate.value <= answer_.value) return;
      Plan plan = worth_.plan_of(candidate.sets, work_.thorough);
      const Evaluation evaluation = evaluate(p_, plan);
      const bool feasible = evaluation.broken.empty();
      if (answer_.feasible && (!feasible || evaluation.value <= answer_.value)) continue;
      answer_.plan = std::move(plan);
      answer_.value = evaluation.value;
      answer_.feasible = feasible;
    }
  }
};

}  // namespace

Work times(const Work& work, double times) {
  Work out = work;
  const auto scale = [times](auto& count) {
    using Count = std::remove_reference_t<decltype(count)>;
    count = std::max(Count{1}, static_cast<Count>(std::llround(static_cast<double>(count) * times)));
  };
  scale(out.splits);
  scale(out.more_splits);
  scale(out.last_splits);
  scale(out.worked_out);
  scale(out.thorough.splits);
  if (times > 1) out.near = out.far = out.farther = 0;
  return out;
}

int gap_ten_thousandths(const Answer& answer) {
  // Of the bound as it is told, in whole points, so that a reader comes to the same.
  const Points bound = bound_points(answer);
  if (bound <= 0) return 0;
  return static_cast<int>(((bound - answer.value) * 10000 + bound - 1) / bound);
}

// Values are whole points.
Points bound_points(const Answer& answer) {
  Points points = answer.bound_fine / kFine;
  if (points * kFine > answer.bound_fine) --points;
  return points;
}

Answer solve(const Problem& problem, const Work& work, const Progress& progress) {
  return BlockSolver(problem, work, progress).run();
}

}  // namespace lanework::block
