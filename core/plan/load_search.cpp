// Search over labels with loads in the state, guided by the priced values of the sweep: a label whose lower
// bound is not below the best session known is dropped, and so is one that another of the same state
// dominates in cost, time left and every active load.
#include <algorithm>
#include <numeric>

#include "core/plan/sweep.h"

namespace lanework::plan {
namespace {

// Priced values may be fractions or pass 2^53, where a double is off by a few units of the last level; the
// bound is taken this much lower, which only keeps a few labels more.
constexpr double kRoundingSlack = 256;
// Room above the bound for the first search, and how it grows: two dose steps, then four times as much.
constexpr double kFirstRoom = 8.0 * static_cast<double>(kChangesUnit);
constexpr double kRoomGrowth = 4;
constexpr double kMostRoom = static_cast<double>(kUncoveredUnit);

struct Label {
  double cost = 0;  // true
  int time = 0;     // seconds left
  std::array<int, kLoads> used{};
  int node = -1;  // what was taken last, in the list of nodes
  Sweep::State state;
};

struct Node {
  int parent;
  int drill;
  int option;
};

class LoadSearch {
 public:
  LoadSearch(const KernelProblem& problem, const std::array<bool, kLoads>& active, KernelWorkspace& workspace)
      : p_(problem), active_(active), sweep_(problem, workspace) {}

  // The bound is often close: searches below a limit a little above it drop nearly every label, and the
  // limit grows until something is found or it is 'below'.
  std::optional<KernelAnswer> run(double below) {
    double bound = sweep_.solve();
    if (forbidden(bound)) return {};
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (active_[l]) bound -= p_.prices[l] * p_.ceiling[l];
    }
    for (double room = kFirstRoom; bound + room < below; room *= kRoomGrowth) {
      if (room > kMostRoom) break;
      std::optional<KernelAnswer> found = search_below(bound + room);
      if (found) return found;
    }
    return search_below(below);
  }

 private:
  const KernelProblem& p_;
  const std::array<bool, kLoads>& active_;
  double below_ = 0;
  Sweep sweep_;
  std::vector<Label> labels_;
  std::vector<Label> grown_;
  std::vector<Label> front_;
  std::vector<Node> nodes_;

  std::optional<KernelAnswer> search_below(double below) {
    below_ = below;
    nodes_.clear();
    Label first;
    first.time = p_.budget;
    labels_ = {first};
    for (std::size_t g = 0; g < p_.groups.size() && !labels_.empty(); ++g) {
      sweep_.sweep_group(g);
      for (std::size_t k = 0; k < sweep_.drills_in(g); ++k) expand(g, k);
      for (Label& label : labels_) {
        label.cost += sweep_.end_cost(g, label.state.flag, label.state.credits);
        label.state = sweep_.next_group(g, label.state);
      }
    }
    return best();
  }

  // No completion of the label costs less: priced value to go, less what the unused loads are worth.
  [[nodiscard]] double bound(std::size_t g, std::size_t k, const Label& label) const {
    double worth = 0;
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (active_[l]) worth += p_.prices[l] * (p_.ceiling[l] - label.used[l]);
    }
    return label.cost + sweep_.value(g, k, label.state, label.time) - worth - kRoundingSlack;
  }

  void expand(std::size_t g, std::size_t k) {
    const KernelDrill& drill = p_.drills[sweep_.drill_of(g, k)];
    grown_.clear();
    for (const Label& label : labels_) {
      if (!drill.must) {
        Label skipped = label;
        skipped.cost += drill.skip_cost;
        if (bound(g, k + 1, skipped) < below_) grown_.push_back(skipped);
      }
      for (const KernelOption& option : drill.options) take(g, k, label, option);
    }
    strike_dominated(g, k + 1);
  }

  void take(std::size_t g, std::size_t k, const Label& label, const KernelOption& option) {
    if (sweep_.too_new(label.state, option)) return;
    Label after = label;
    after.time -= sweep_.change_to(g, k, label.state) + option.seconds;
    if (after.time < 0) return;
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (!active_[l]) continue;
      after.used[l] += option.loads[l];
      if (after.used[l] > p_.ceiling[l]) return;
    }
    after.cost += option.cost;
    after.state = sweep_.taken(g, k, label.state, option);
    if (bound(g, k + 1, after) >= below_) return;
    nodes_.push_back({label.node, static_cast<int>(sweep_.drill_of(g, k)), option.option});
    after.node = static_cast<int>(nodes_.size()) - 1;
    grown_.push_back(after);
  }

  // No less time left and no more of any load used.
  [[nodiscard]] static bool as_good(const Label& a, const Label& b) {
    if (a.time < b.time) return false;
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (a.used[l] > b.used[l]) return false;
    }
    return true;
  }

  // Labels of a state come by rising cost, so one is dominated when some earlier one is as good. Of those, the
  // front holds only what no later one has made idle.
  void strike_dominated(std::size_t g, std::size_t k) {
    const auto bucket = [&](const Label& label) {
      return label.state.started ? sweep_.state_index(g, k, label.state) + 1 : 0;
    };
    std::stable_sort(grown_.begin(), grown_.end(), [&](const Label& a, const Label& b) {
      const std::size_t in_a = bucket(a);
      const std::size_t in_b = bucket(b);
      if (in_a != in_b) return in_a < in_b;
      if (a.cost != b.cost) return a.cost < b.cost;
      return a.time > b.time;
    });
    labels_.clear();
    front_.clear();
    for (const Label& label : grown_) {
      if (!labels_.empty() && bucket(labels_.back()) != bucket(label)) front_.clear();
      const auto better = [&](const Label& other) { return as_good(other, label); };
      if (std::any_of(front_.begin(), front_.end(), better)) continue;
      const auto idle = [&](const Label& other) { return as_good(label, other); };
      front_.erase(std::remove_if(front_.begin(), front_.end(), idle), front_.end());
      front_.push_back(label);
      labels_.push_back(label);
    }
  }

  [[nodiscard]] std::optional<KernelAnswer> best() const {
    const Label* least = nullptr;
    for (const Label& label : labels_) {
      if (label.state.started && label.cost < below_ && (least == nullptr || label.cost < least->cost)) least = &label;
    }
    if (least == nullptr) return {};
    KernelAnswer answer;
    answer.value = least->cost;
    answer.options.assign(p_.drills.size(), -1);
    for (int n = least->node; n >= 0; n = nodes_[static_cast<std::size_t>(n)].parent) {
      const Node& node = nodes_[static_cast<std::size_t>(n)];
      answer.options[static_cast<std::size_t>(node.drill)] = node.option;
    }
    return answer;
  }
};

}  // namespace

std::optional<KernelAnswer> search_with_loads(const KernelProblem& problem, const std::array<bool, kLoads>& active,
                                              double below, KernelWorkspace& workspace) {
  if (problem.budget < 0) return {};
  return LoadSearch(problem, active, workspace).run(below);
}

}  // namespace lanework::plan
