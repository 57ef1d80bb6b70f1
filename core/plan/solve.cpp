#include "core/plan/solve.h"

#include <algorithm>
#include <cassert>

#include "core/plan/sweep.h"

namespace lanework::plan {
namespace {

using Active = std::array<bool, kLoads>;

// One priced solution: its true cost and its loads.
struct Point {
  Choice choice;
  Evaluation evaluation;
  double cost = 0;
  double value = 0;  // priced
};

// Times in steps, for prices that need not be exact: a few times fewer states.
KernelProblem coarsened(const KernelProblem& problem) {
  constexpr int kStepSeconds = 4;
  const auto steps = [](int seconds) { return (seconds + kStepSeconds / 2) / kStepSeconds; };
  KernelProblem out = problem;
  out.budget = problem.budget / kStepSeconds;
  for (auto& row : out.change) {
    for (int& seconds : row) seconds = steps(seconds);
  }
  for (KernelDrill& drill : out.drills) {
    for (KernelOption& option : drill.options) option.seconds = steps(option.seconds);
  }
  return out;
}

// Prices of the broken loads that make the bound high, found on coarse times; the search proves the rest.
class LoadPricing {
 public:
  LoadPricing(const Problem& problem, const Active& active, KernelWorkspace& workspace)
      : problem_(problem),
        active_(active),
        workspace_(workspace),
        kernel_(kernel_problem(problem, active)),
        coarse_(coarsened(kernel_)) {
    // New drills are counted in the state; the other loads are priced.
    for (std::size_t l = 0; l < kNew; ++l) dearest_[l] = active[l] ? dearest_price(l) : 0;
  }

  // One load after the other at its best price, the others fixed, until none moves.
  void find_prices() {
    free_ = point_at({});
    if (!free_) return;
    Prices prices{};
    for (int round = 0; round < kRounds; ++round) {
      const Prices before = prices;
      for (std::size_t l = 0; l < kNew; ++l) {
        if (active_[l]) prices[l] = best_price(prices, l);
      }
      if (prices == before || std::count(active_.begin(), active_.begin() + kNew, true) < 2) return;
    }
  }

  // Also the loads that the session at the best prices breaks: they are likely to bind.
  [[nodiscard]] Active likely() const {
    Active out = active_;
    for (std::size_t l = 0; l < kLoads; ++l) out[l] = out[l] || best_loads_[l] > problem_.ceiling[l];
    return out;
  }

  // REQUIRES: find_prices().
  std::optional<Solution> search() {
    set_prices(kernel_, best_prices_);
    const double below = incumbent_ ? incumbent_->cost : kForbidden;
    const auto found = search_with_loads(kernel_, active_, below, workspace_);
    if (found) return solution_of(found->options);
    if (incumbent_) return solution_of(incumbent_->choice);
    return {};
  }

 private:
  static constexpr auto kNew = static_cast<std::size_t>(Load::kNewDrills);
  static constexpr int kRounds = 3;
  static constexpr int kMostCuts = 4;

  const Problem& problem_;
  Active active_;
  KernelWorkspace& workspace_;
  KernelProblem kernel_;
  KernelProblem coarse_;
  Prices dearest_{};
  std::optional<Point> free_;       // at no prices, ceilings not regarded
  std::optional<Point> incumbent_;  // the best session that keeps the clock and the active ceilings
  double bound_ = 0;                // the highest, on coarse times
  Prices best_prices_{};            // those that gave the bound, and what its session uses
  std::array<int, kLoads> best_loads_{};

  [[nodiscard]] Solution solution_of(const Choice& choice) const {
    return {choice, evaluate(problem_, choice), active_};
  }

  // At this price the smallest load is dearer than covering every family it could cover.
  [[nodiscard]] double dearest_price(std::size_t load) const {
    int smallest = 0;
    for (const KernelDrill& drill : kernel_.drills) {
      for (const KernelOption& option : drill.options) {
        const int amount = option.loads[load];
        if (amount > 0 && (smallest == 0 || amount < smallest)) smallest = amount;
      }
    }
    return 2.0 * static_cast<double>(kUncoveredUnit) / std::max(1, smallest);
  }

  std::optional<Point> point_at(const Prices& prices) {
    set_prices(coarse_, prices);
    std::optional<KernelAnswer> answer = solve_kernel(coarse_, workspace_);
    if (!answer) return {};
    Point point{std::move(answer->options), {}, 0, answer->value};
    point.evaluation = evaluate(problem_, point.choice);
    point.cost = static_cast<double>(packed(point.evaluation.objective));
    double bound = point.value;
    for (std::size_t l = 0; l < kLoads; ++l) bound -= prices[l] * problem_.ceiling[l];
    if (bound > bound_) {
      bound_ = bound;
      best_prices_ = prices;
      best_loads_ = point.evaluation.loads;
    }
    bool keeps = point.evaluation.seconds <= problem_.budget;
    for (std::size_t l = 0; l < kLoads; ++l) {
      keeps = keeps && (!active_[l] || point.evaluation.loads[l] <= problem_.ceiling[l]);
    }
    if (keeps && (!incumbent_ || point.cost < incumbent_->cost)) incumbent_ = point;
    return point;
  }

  // Cost of a point as a line in the price of one load, the other prices fixed: intercept + price * slope.
  struct Line {
    double intercept = 0;
    double slope = 0;
  };
  [[nodiscard]] Line line_of(const Point& point, const Prices& prices, std::size_t load) const {
    Line line{point.cost, static_cast<double>(point.evaluation.loads[load] - problem_.ceiling[load])};
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (l != load) line.intercept += prices[l] * (point.evaluation.loads[l] - problem_.ceiling[l]);
    }
    return line;
  }

  // The price at which the lower envelope of the lines is highest, found by crossing the two lines that
  // bracket it until no new point lies below their crossing.
  double best_price(Prices prices, std::size_t load) {
    prices[load] = 0;
    const bool unpriced = prices == Prices{};
    const std::optional<Point> free = unpriced ? free_ : point_at(prices);
    if (!free) return 0;
    Line over = line_of(*free, prices, load);
    if (over.slope <= 0) return 0;
    prices[load] = dearest_[load];
    const std::optional<Point> dear = point_at(prices);
    if (!dear) return 0;
    Line under = line_of(*dear, prices, load);
    if (under.slope > 0) return dearest_[load];
    double price = dearest_[load];
    for (int cut = 0; cut < kMostCuts; ++cut) {
      price = (under.intercept - over.intercept) / (over.slope - under.slope);
      prices[load] = price;
      const std::optional<Point> point = point_at(prices);
      if (!point) break;
      const Line line = line_of(*point, prices, load);
      const double crossing = over.intercept + price * over.slope;
      if (line.intercept + price * line.slope >= crossing - 0.5) break;
      (line.slope > 0 ? over : under) = line;
    }
    return price;
  }
};

// Pins alone may already break a ceiling; then no price helps.
bool pins_break_a_ceiling(const Problem& problem) {
  for (std::size_t l = 0; l < kLoads; ++l) {
    int least = 0;
    for (const ProblemDrill& drill : problem.drills) {
      if (!drill.pinned || drill.options.empty()) continue;
      int smallest = drill.options[0].loads[l];
      for (const Option& option : drill.options) smallest = std::min(smallest, option.loads[l]);
      least += smallest;
    }
    if (least > problem.ceiling[l]) return true;
  }
  return false;
}

// A pinned drill without a way of doing it, or pins that take longer than there is.
bool pins_cannot_fit(const Problem& problem) {
  int least = 0;
  for (const ProblemDrill& drill : problem.drills) {
    if (!drill.pinned) continue;
    if (drill.options.empty()) return true;
    int shortest = drill.options[0].seconds;
    for (const Option& option : drill.options) shortest = std::min(shortest, option.seconds);
    least += shortest;
  }
  return least > problem.budget;
}

// The session without any departure, where it can be done and leaves nothing short: no value is below 0.
std::optional<Solution> nothing_to_change(const Problem& problem) {
  Solution solution;
  for (const ProblemDrill& drill : problem.drills) {
    int option = -1;
    for (std::size_t o = 0; o < drill.options.size() && option < 0; ++o) {
      const bool unchanged = drill.options[o].changes == 0 && drill.options[o].preference == 0;
      if (drill.routine_line >= 0 && unchanged) option = static_cast<int>(o);
    }
    solution.choice.push_back(option);
  }
  solution.evaluation = evaluate(problem, solution.choice);
  const bool perfect = solution.evaluation.feasible && packed(solution.evaluation.objective) == 0;
  return perfect ? std::optional<Solution>(std::move(solution)) : std::nullopt;
}

// Exact, with at least the loads named active in the state; those that are likely to bind too are brought in.
std::optional<Solution> solve_with_loads(const Problem& problem, Active& active, KernelWorkspace& workspace) {
  LoadPricing pricing(problem, active, workspace);
  pricing.find_prices();
  const Active likely = pricing.likely();
  if (likely == active) return pricing.search();
  active = likely;
  LoadPricing wider(problem, active, workspace);
  wider.find_prices();
  return wider.search();
}

}  // namespace

std::optional<Solution> solve(const Problem& problem, KernelWorkspace& workspace) {
  if (pins_cannot_fit(problem) || pins_break_a_ceiling(problem)) return {};
  if (std::optional<Solution> unchanged = nothing_to_change(problem)) return unchanged;
  KernelProblem kernel = kernel_problem(problem, {});
  std::optional<KernelAnswer> answer = solve_kernel(kernel, workspace);
  if (!answer) return {};
  Solution solution;
  solution.choice = std::move(answer->options);
  solution.evaluation = evaluate(problem, solution.choice);
  assert(packed(solution.evaluation.objective) == static_cast<std::int64_t>(answer->value));
  Active active{};
  while (true) {
    Active broken = active;
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (solution.evaluation.loads[l] > problem.ceiling[l]) broken[l] = true;
    }
    if (broken == active) return solution;  // a load in the state never breaks its ceiling
    active = broken;
    std::optional<Solution> with_loads = solve_with_loads(problem, active, workspace);
    if (!with_loads) return {};
    solution = std::move(*with_loads);
  }
}

}  // namespace lanework::plan
