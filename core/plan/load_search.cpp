// Search over labels with loads in the state, guided by the priced values of the sweep: a label whose lower
// bound is not below the best session known is dropped, and so is one that another of the same state
// dominates in cost, time left and every active load. Quick passes that keep only the most promising labels
// find a good session; the last keeps all that could be better, and so proves the best.
#include <algorithm>

#include "core/plan/sweep.h"

namespace lanework::plan {
namespace {

// Priced values may be fractions or pass 2^53, where a double is off by a few units of the last level; the
// bound is taken this much lower, which only keeps a few labels more.
constexpr double kRoundingSlack = 256;
// Labels that the quick passes keep before each drill; they run while each finds something better and the best
// session known is further above the bound than this.
constexpr std::array<std::size_t, 2> kBeams{64, 512};
constexpr double kNear = static_cast<double>(kShortfallUnit);
constexpr std::size_t kAll = static_cast<std::size_t>(-1);

// New drills are counted in the state of the sweep where they are active; the other loads here.
constexpr std::size_t kCounted = kLoads - 1;
static_assert(static_cast<std::size_t>(Load::kNewDrills) == kCounted);

struct Label {
  double cost = 0;  // true
  double bound = 0;
  int time = 0;  // seconds left
  std::array<int, kCounted> used{};
  int node = -1;    // what was taken last, in the list of nodes
  int option = -1;  // what of the drill just looked at, -1: nothing; on top of 'node'
  Sweep::State state;
};

struct Node {
  int parent;
  int drill;
  int option;
};

// What labels are sorted by: cheap to move.
struct Key {
  std::size_t bucket;
  double cost;
  std::size_t label;
};

class LoadSearch {
 public:
  LoadSearch(const KernelProblem& problem, const std::array<bool, kLoads>& active, KernelWorkspace& workspace)
      : p_(problem), active_(active), sweep_(problem, workspace) {}

  std::optional<KernelAnswer> run(double below) {
    double bound = sweep_.solve();
    if (forbidden(bound)) return {};
    for (std::size_t l = 0; l < kCounted; ++l) bound -= p_.prices[l] * p_.ceiling[l];
    std::optional<KernelAnswer> best;
    for (const std::size_t most : kBeams) {
      if (below - bound <= kNear || !improve(best, below, most)) break;
    }
    improve(best, below, kAll);
    return best;
  }

 private:
  const KernelProblem& p_;
  const std::array<bool, kLoads>& active_;
  double below_ = 0;
  Sweep sweep_;
  std::vector<Label> labels_;
  std::vector<Label> grown_;
  std::vector<Key> keys_;
  std::vector<std::size_t> front_;
  std::vector<Node> nodes_;

  bool improve(std::optional<KernelAnswer>& best, double& below, std::size_t most) {
    std::optional<KernelAnswer> better = search_below(below, most);
    if (!better) return false;
    below = better->value;
    best = std::move(better);
    return true;
  }

  std::optional<KernelAnswer> search_below(double below, std::size_t most) {
    below_ = below;
    nodes_.clear();
    Label first;
    first.time = p_.budget;
    labels_ = {first};
    for (std::size_t g = 0; g < p_.groups.size() && !labels_.empty(); ++g) {
      sweep_.sweep_group_part(g, part_of_labels());
      for (std::size_t k = 0; k < sweep_.drills_in(g); ++k) {
        expand(g, k);
        keep_undominated(g, k);
        keep_promising(most);
      }
      for (Label& label : labels_) {
        label.cost += sweep_.end_cost(g, label.state.flag, label.state.credits);
        label.state = sweep_.next_group(g, label.state);
      }
    }
    return best();
  }

  // The states that the labels are in before a group.
  [[nodiscard]] Sweep::Part part_of_labels() const {
    Sweep::Part part{labels_[0].state.flag, labels_[0].state.flag, labels_[0].state.fresh, p_.budget, 0};
    for (const Label& label : labels_) {
      part.first_flag = std::min<std::size_t>(part.first_flag, label.state.flag);
      part.last_flag = std::max<std::size_t>(part.last_flag, label.state.flag);
      part.first_fresh = std::min<std::size_t>(part.first_fresh, label.state.fresh);
      part.least = std::min(part.least, label.time);
      part.most = std::max(part.most, label.time);
    }
    return part;
  }

  // No completion of the label costs less: priced value to go, less what the unused loads are worth.
  [[nodiscard]] double bound(std::size_t g, std::size_t k, const Label& label) const {
    double worth = 0;
    for (std::size_t l = 0; l < kCounted; ++l) worth += p_.prices[l] * (p_.ceiling[l] - label.used[l]);
    return label.cost + sweep_.value(g, k, label.state, label.time) - worth - kRoundingSlack;
  }

  void expand(std::size_t g, std::size_t k) {
    const KernelDrill& drill = p_.drills[sweep_.drill_of(g, k)];
    grown_.clear();
    for (const Label& label : labels_) {
      if (!drill.must) {
        Label skipped = label;
        skipped.cost += drill.skip_cost;
        skipped.option = -1;
        grow(g, k + 1, skipped);
      }
      const int time = label.time - sweep_.change_to(g, k, label.state);
      for (const KernelOption& option : drill.options) take(g, k, label, option, time - option.seconds);
    }
  }

  void take(std::size_t g, std::size_t k, const Label& label, const KernelOption& option, int time) {
    if (time < 0 || sweep_.too_new(label.state, option)) return;
    Label after = label;
    after.time = time;
    for (std::size_t l = 0; l < kCounted; ++l) {
      if (!active_[l]) continue;
      after.used[l] += option.loads[l];
      if (after.used[l] > p_.ceiling[l]) return;
    }
    after.cost += option.cost;
    after.state = sweep_.taken(g, k, label.state, option);
    after.option = option.option;
    grow(g, k + 1, after);
  }

  void grow(std::size_t g, std::size_t k, Label& label) {
    label.bound = bound(g, k, label);
    if (label.bound < below_) grown_.push_back(label);
  }

  // No less time left, no more of any load used, no fewer credits and no more new drills.
  [[nodiscard]] static bool as_good(const Label& a, const Label& b) {
    bool good = a.time >= b.time && a.state.fresh <= b.state.fresh && a.state.credits >= b.state.credits;
    for (std::size_t l = 0; l < kCounted; ++l) good = good && a.used[l] <= b.used[l];
    return good;
  }

  // What must be equal for one label to dominate another: flag and formation, or nothing taken so far.
  [[nodiscard]] static std::size_t bucket(const Label& label) {
    return label.state.started ? 1 + label.state.flag * catalogue::kFormations + label.state.form : 0;
  }

  // Labels of a bucket come by rising cost, so one is dominated when some earlier one is as good. Of those, the
  // front holds only what no later one has made idle.
  void keep_undominated(std::size_t g, std::size_t k) {
    keys_.clear();
    for (std::size_t i = 0; i < grown_.size(); ++i) keys_.push_back({bucket(grown_[i]), grown_[i].cost, i});
    std::sort(keys_.begin(), keys_.end(), [&](const Key& a, const Key& b) {
      if (a.bucket != b.bucket) return a.bucket < b.bucket;
      if (a.cost != b.cost) return a.cost < b.cost;
      const Label& left = grown_[a.label];
      const Label& right = grown_[b.label];
      return left.time != right.time ? left.time > right.time : a.label < b.label;
    });
    labels_.clear();
    front_.clear();
    std::size_t current = kAll;
    for (const Key& key : keys_) {
      if (key.bucket != current) front_.clear();
      current = key.bucket;
      const Label& label = grown_[key.label];
      const auto better = [&](std::size_t other) { return as_good(grown_[other], label); };
      if (std::any_of(front_.begin(), front_.end(), better)) continue;
      const auto idle = [&](std::size_t other) { return as_good(label, grown_[other]); };
      front_.erase(std::remove_if(front_.begin(), front_.end(), idle), front_.end());
      front_.push_back(key.label);
      labels_.push_back(label);
      remember(static_cast<int>(sweep_.drill_of(g, k)), labels_.back());
    }
  }

  void remember(int drill, Label& label) {
    if (label.option < 0) return;
    nodes_.push_back({label.node, drill, label.option});
    label.node = static_cast<int>(nodes_.size()) - 1;
  }

  void keep_promising(std::size_t most) {
    if (labels_.size() <= most) return;
    const auto nth = labels_.begin() + static_cast<std::ptrdiff_t>(most);
    const auto nearer = [](const Label& a, const Label& b) {
      return a.bound != b.bound ? a.bound < b.bound : a.node < b.node;
    };
    std::nth_element(labels_.begin(), nth, labels_.end(), nearer);
    labels_.erase(nth, labels_.end());
    std::sort(labels_.begin(), labels_.end(), nearer);  // the same order with every library
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
