#include "core/plan/kernel.h"

#include <algorithm>
#include <cassert>

#include "core/plan/load_levels.h"

namespace lanework::plan {
namespace {

// Far above every packed value and finite, so that adding costs to it stays well defined.
constexpr double kForbidden = 1e30;

constexpr int kForms = catalogue::kFormations;

bool forbidden(double value) { return value >= kForbidden / 2; }

// row[t] = least of row[t] and source[t - shift] + cost, for t = shift .. budget.
void relax_row(double* row, const double* source, int shift, double cost, int budget) {
  double* to = row + shift;
  const int count = budget + 1 - shift;
  for (int t = 0; t < count; ++t) {
    const double candidate = source[t] + cost;
    to[t] = candidate < to[t] ? candidate : to[t];
  }
}

class Sweep {
 public:
  Sweep(const KernelProblem& problem, KernelWorkspace& workspace)
      : p_(problem), w_(workspace), levels_(problem), row_(static_cast<std::size_t>(problem.budget) + 1) {
    find_alive_flags();
    find_boundaries();
  }

  std::optional<KernelAnswer> solve() {
    start_.assign(p_.groups.size() + 1, kForbidden);  // nothing taken at all is no session
    double* end = boundary(p_.groups.size());
    std::fill(end, end + boundary_rows(p_.groups.size()) * row_, 0.0);
    for (std::size_t g = p_.groups.size(); g-- > 0;) {
      sweep_group(g);
      const double* first = inside(0);
      std::size_t to = 0;
      for (std::size_t flag = 0; flag < flags_[g]; ++flag) {
        for (std::size_t level = 0; level < levels_.count(drill_of(g, 0)); ++level) {
          for (std::size_t form = 0; form < kForms; ++form, ++to) {
            const double* from = first + inside_row(g, 0, flag, level, 0, form) * row_;
            std::copy(from, from + row_, boundary(g) + to * row_);
          }
        }
      }
      start_[g] = start_inside_[0];
    }
    if (p_.budget < 0 || forbidden(start_[0])) return {};
    return read_out();
  }

 private:
  const KernelProblem& p_;
  KernelWorkspace& w_;
  LoadLevels levels_;
  std::size_t row_;                           // doubles in a row: one a second of time left
  std::vector<std::array<int, 2>> alive_;     // for each boundary the flags alive, or -1
  std::vector<std::size_t> flags_;            // for each boundary the number of flag states
  std::vector<std::size_t> boundary_offset_;  // in rows
  std::vector<std::size_t> inside_offset_;    // in rows, for the group swept last
  std::vector<double> start_;                 // value at a boundary with nothing taken so far
  std::vector<double> start_inside_;          // the same inside the group swept last

  [[nodiscard]] std::size_t drill_of(std::size_t g, std::size_t k) const {
    return static_cast<std::size_t>(p_.groups[g].first) + k;
  }
  [[nodiscard]] std::size_t size_of(std::size_t g) const {
    return static_cast<std::size_t>(p_.groups[g].last - p_.groups[g].first);
  }
  [[nodiscard]] std::size_t cap_of(std::size_t g) const { return p_.groups[g].reached_cost.size() - 1; }

  void find_alive_flags() {
    const std::size_t count = p_.groups.size() + 1;
    alive_.assign(count, {-1, -1});
    flags_.assign(count, 1);
    for (int flag = 0; flag < 2; ++flag) {
      bool alive = false;
      for (std::size_t g = 0; g < count; ++g) {
        if (alive) {
          alive_[g][alive_[g][0] < 0 ? 0 : 1] = flag;
          flags_[g] *= 2;
        }
        if (g + 1 == count) break;
        if (p_.groups[g].sets_flag == flag) alive = true;
        if (p_.groups[g].reads_flag == flag) alive = false;
      }
    }
  }

  // The bit of a flag inside a state index of boundary g; 0 when it is not alive there.
  [[nodiscard]] std::size_t bit(std::size_t g, int flag) const {
    if (flag < 0) return 0;
    if (alive_[g][0] == flag) return 1;
    return alive_[g][1] == flag ? 2 : 0;
  }

  void find_boundaries() {
    boundary_offset_.assign(p_.groups.size() + 2, 0);
    for (std::size_t g = 0; g <= p_.groups.size(); ++g) {
      boundary_offset_[g + 1] = boundary_offset_[g] + boundary_rows(g);
    }
    const std::size_t need = boundary_offset_.back() * row_;
    if (w_.boundary.size() < need) w_.boundary.resize(need);
    if (w_.take.size() < row_) w_.take.resize(row_);
  }
  [[nodiscard]] std::size_t boundary_drill(std::size_t g) const {
    return g < p_.groups.size() ? drill_of(g, 0) : p_.drills.size();
  }
  [[nodiscard]] std::size_t boundary_rows(std::size_t g) const {
    return flags_[g] * levels_.count(boundary_drill(g)) * kForms;
  }
  double* boundary(std::size_t g) { return w_.boundary.data() + boundary_offset_[g] * row_; }
  double* boundary_row(std::size_t g, std::size_t flag, std::size_t level, std::size_t form) {
    return boundary(g) + ((flag * levels_.count(boundary_drill(g)) + level) * kForms + form) * row_;
  }

  // Credits that can have been reached before the k-th drill of the group: 0 .. credits_before.
  [[nodiscard]] std::size_t credits_before(std::size_t g, std::size_t k) const {
    int sum = 0;
    for (std::size_t j = 0; j < k; ++j) {
      int most = 0;
      for (const KernelOption& o : p_.drills[drill_of(g, j)].options) most = std::max(most, o.credits);
      sum += most;
    }
    return std::min(cap_of(g), static_cast<std::size_t>(sum));
  }
  [[nodiscard]] std::size_t inside_row(std::size_t g, std::size_t k, std::size_t flag, std::size_t level,
                                       std::size_t credits, std::size_t form) const {
    const std::size_t credit_count = credits_before(g, k) + 1;
    return ((flag * levels_.count(drill_of(g, k)) + level) * credit_count + credits) * kForms + form;
  }
  double* inside(std::size_t k) { return w_.inside.data() + inside_offset_[k] * row_; }

  [[nodiscard]] std::size_t flag_after(std::size_t g, std::size_t flag, bool covered) const {
    std::size_t out = 0;
    for (int f = 0; f < 2; ++f) {
      const std::size_t after = bit(g + 1, f);
      if (after == 0) continue;
      const bool set = p_.groups[g].sets_flag == f ? covered : (flag & bit(g, f)) != 0;
      if (set) out |= after;
    }
    return out;
  }
  // Cost of ending the group with these credits.
  [[nodiscard]] double end_cost(std::size_t g, std::size_t flag, std::size_t credits) const {
    const KernelGroup& group = p_.groups[g];
    double cost = group.reached_cost[credits];
    const bool covered_before = group.reads_flag >= 0 && (flag & bit(g, group.reads_flag)) != 0;
    if (credits == 0 && !covered_before) cost += group.empty_cost;
    return cost;
  }

  void sweep_group(std::size_t g) {
    const std::size_t n = size_of(g);
    inside_offset_.assign(n + 2, 0);
    for (std::size_t k = 0; k <= n; ++k) {
      const std::size_t rows = flags_[g] * levels_.count(drill_of(g, k)) * (credits_before(g, k) + 1) * kForms;
      inside_offset_[k + 1] = inside_offset_[k] + rows;
    }
    const std::size_t need = inside_offset_.back() * row_;
    if (w_.inside.size() < need) w_.inside.resize(need);
    start_inside_.assign(n + 1, kForbidden);
    sweep_end(g, n);
    for (std::size_t k = n; k-- > 0;) sweep_drill(g, k);
  }

  void sweep_end(std::size_t g, std::size_t n) {
    for (std::size_t flag = 0; flag < flags_[g]; ++flag) {
      for (std::size_t level = 0; level < levels_.count(drill_of(g, n)); ++level) {
        for (std::size_t c = 0; c <= credits_before(g, n); ++c) {
          const double cost = end_cost(g, flag, c);
          for (std::size_t form = 0; form < kForms; ++form) {
            const double* from = boundary_row(g + 1, flag_after(g, flag, c > 0), level, form);
            double* to = inside(n) + inside_row(g, n, flag, level, c, form) * row_;
            for (std::size_t t = 0; t < row_; ++t) to[t] = from[t] + cost;
          }
        }
      }
    }
    start_inside_[n] = start_[g + 1] + end_cost(g, 0, 0);
  }

  void sweep_drill(std::size_t g, std::size_t k) {
    const KernelDrill& drill = p_.drills[drill_of(g, k)];
    for (std::size_t flag = 0; flag < flags_[g]; ++flag) {
      for (std::size_t level = 0; level < levels_.count(drill_of(g, k)); ++level) {
        for (std::size_t c = 0; c <= credits_before(g, k); ++c) sweep_state(g, k, drill, flag, level, c);
      }
    }
    double& start = start_inside_[k];
    start = drill.must ? kForbidden : start_inside_[k + 1] + drill.skip_cost;
    for (const KernelOption& option : drill.options) {
      const double value = after_taking(g, k, option, 0, 0, 0, p_.budget);
      start = std::min(start, value + option.cost);
    }
  }

  // Value after taking an option with 'time' left before it (no formation change); kForbidden if it cannot be.
  double after_taking(std::size_t g, std::size_t k, const KernelOption& option, std::size_t flag, std::size_t level,
                      std::size_t credits, int time) {
    if (option.seconds > time) return kForbidden;
    const int to_level = levels_.after(drill_of(g, k), level, option.loads);
    if (to_level < 0) return kForbidden;
    return taken_row(g, k, option, flag, static_cast<std::size_t>(to_level), credits)[time - option.seconds];
  }
  const double* taken_row(std::size_t g, std::size_t k, const KernelOption& option, std::size_t flag,
                          std::size_t to_level, std::size_t credits) {
    const std::size_t reached = std::min(cap_of(g), credits + static_cast<std::size_t>(option.credits));
    const auto form = static_cast<std::size_t>(p_.drills[drill_of(g, k)].formation);
    return inside(k + 1) + inside_row(g, k + 1, flag, to_level, reached, form) * row_;
  }
  // Level after leaving the drill out.
  [[nodiscard]] std::size_t level_left_out(std::size_t g, std::size_t k, std::size_t level) const {
    return static_cast<std::size_t>(levels_.after(drill_of(g, k), level, {}));
  }

  void sweep_state(std::size_t g, std::size_t k, const KernelDrill& drill, std::size_t flag, std::size_t level,
                   std::size_t credits) {
    double* take = w_.take.data();
    std::fill(take, take + row_, kForbidden);
    for (const KernelOption& option : drill.options) {
      const int to_level = levels_.after(drill_of(g, k), level, option.loads);
      if (to_level < 0 || option.seconds > p_.budget) continue;
      relax_row(take, taken_row(g, k, option, flag, static_cast<std::size_t>(to_level), credits), option.seconds,
                option.cost, p_.budget);
    }
    const std::size_t skip_level = level_left_out(g, k, level);
    for (std::size_t form = 0; form < kForms; ++form) {
      double* to = inside(k) + inside_row(g, k, flag, level, credits, form) * row_;
      if (drill.must) {
        std::fill(to, to + row_, kForbidden);
      } else {
        const double* skip = inside(k + 1) + inside_row(g, k + 1, flag, skip_level, credits, form) * row_;
        const double cost = drill.skip_cost;
        for (std::size_t t = 0; t < row_; ++t) to[t] = skip[t] + cost;
      }
      const int shift = p_.change[form][static_cast<std::size_t>(drill.formation)];
      if (!drill.options.empty() && shift <= p_.budget) relax_row(to, take, shift, 0.0, p_.budget);
    }
  }

  KernelAnswer read_out() {
    KernelAnswer answer;
    answer.value = start_[0];
    answer.options.assign(p_.drills.size(), -1);
    bool started = false;
    std::size_t flag = 0;
    std::size_t level = 0;
    std::size_t form = 0;
    int time = p_.budget;
    for (std::size_t g = 0; g < p_.groups.size(); ++g) {
      sweep_group(g);
      std::size_t credits = 0;
      for (std::size_t k = 0; k < size_of(g); ++k) {
        const KernelDrill& drill = p_.drills[drill_of(g, k)];
        const double value =
            started ? inside(k)[inside_row(g, k, flag, level, credits, form) * row_ + static_cast<std::size_t>(time)]
                    : start_inside_[k];
        const int shift = started ? p_.change[form][static_cast<std::size_t>(drill.formation)] : 0;
        const KernelOption* chosen = nullptr;
        for (const KernelOption& option : drill.options) {
          if (shift > time) break;
          if (after_taking(g, k, option, flag, level, credits, time - shift) + option.cost != value) continue;
          chosen = &option;
          break;
        }
        if (chosen == nullptr) {
          level = level_left_out(g, k, level);
          continue;
        }
        answer.options[drill_of(g, k)] = chosen->option;
        started = true;
        form = static_cast<std::size_t>(drill.formation);
        time -= shift + chosen->seconds;
        level = static_cast<std::size_t>(levels_.after(drill_of(g, k), level, chosen->loads));
        credits = std::min(cap_of(g), credits + static_cast<std::size_t>(chosen->credits));
      }
      flag = flag_after(g, flag, credits > 0);
    }
    return answer;
  }
};

bool dominates(const KernelOption& a, const KernelOption& b, int cap, const std::array<bool, kLoads>& active) {
  if (a.seconds > b.seconds || a.cost > b.cost || std::min(a.credits, cap) < std::min(b.credits, cap)) return false;
  for (std::size_t l = 0; l < kLoads; ++l) {
    if (active[l] && a.loads[l] > b.loads[l]) return false;
  }
  return true;
}

std::vector<KernelOption> kernel_options(const ProblemDrill& drill, int cap, const std::array<bool, kLoads>& active) {
  std::vector<KernelOption> all;
  for (std::size_t i = 0; i < drill.options.size(); ++i) {
    const Option& o = drill.options[i];
    const double cost = static_cast<double>(packed({0, 0, o.changes, o.preference}));
    all.push_back({o.seconds, std::min(o.credits, cap), cost, o.loads, static_cast<int>(i)});
  }
  std::vector<KernelOption> kept;
  for (std::size_t i = 0; i < all.size(); ++i) {
    bool struck = false;
    for (std::size_t j = 0; j < all.size() && !struck; ++j) {
      if (i == j || !dominates(all[j], all[i], cap, active)) continue;
      struck = j < i || !dominates(all[i], all[j], cap, active);  // of two equals the earlier stays
    }
    if (!struck) kept.push_back(all[i]);
  }
  return kept;
}

}  // namespace

std::optional<KernelAnswer> solve_kernel(const KernelProblem& problem, KernelWorkspace& workspace) {
  if (problem.budget < 0) return {};
  return Sweep(problem, workspace).solve();
}

KernelProblem kernel_problem(const Problem& problem, const std::array<bool, kLoads>& active) {
  KernelProblem out;
  out.budget = problem.budget;
  out.change = problem.change;
  out.active = active;
  out.ceiling = problem.ceiling;
  for (const Group& group : problem.groups) {
    KernelGroup kernel_group;
    const int cap = std::max(1, group.target);
    for (int c = 0; c <= cap; ++c) {
      kernel_group.reached_cost.push_back(static_cast<double>(packed({0, shortfall_cost(group, c), 0, 0})));
    }
    out.groups.push_back(std::move(kernel_group));
  }
  int flag = 0;
  for (const FamilyDemand& family : problem.families) {
    if (!family.required || family.groups.empty()) continue;
    const auto last = static_cast<std::size_t>(family.groups.back());
    out.groups[last].empty_cost = static_cast<double>(kUncoveredUnit);
    if (family.groups.size() < 2) continue;
    assert(family.groups.size() == 2 && flag < 2);
    out.groups[static_cast<std::size_t>(family.groups.front())].sets_flag = flag;
    out.groups[last].reads_flag = flag++;
  }
  int position = 0;
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    out.groups[g].first = position;
    const int cap = std::max(1, problem.groups[g].target);
    while (position < static_cast<int>(problem.drills.size()) &&
           problem.drills[static_cast<std::size_t>(position)].group == static_cast<int>(g)) {
      const ProblemDrill& drill = problem.drills[static_cast<std::size_t>(position++)];
      out.drills.push_back({static_cast<int>(drill.formation), static_cast<double>(packed({0, 0, drill.left_out, 0})),
                            drill.pinned, kernel_options(drill, cap, active)});
    }
    out.groups[g].last = position;
  }
  return out;
}

}  // namespace lanework::plan
