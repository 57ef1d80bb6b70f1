#include "core/people/weighted_matching.h"

#include <algorithm>
#include <limits>

namespace lanework::people {

CostTable::CostTable(int size)
    : size_(size), cells_(static_cast<std::size_t>(size) * static_cast<std::size_t>(size), kNoEdge) {}

void CostTable::set(int u, int v, std::int64_t cost) {
  cells_[index(u, v)] = cost;
  cells_[index(v, u)] = cost;
}

namespace {

constexpr int kNone = -1;
constexpr std::int64_t kFar = std::numeric_limits<std::int64_t>::max();

enum class Label { kFree, kOuter, kInner };

struct Edge {
  int from = kNone;
  int to = kNone;
};

// A vertex, or a blossom: an odd cycle of nodes that acts as one vertex.
struct Node {
  std::vector<int> children;  // blossoms only; children[0] holds the base
  std::vector<Edge> links;    // links[k] joins children[k] to the next, from and to being vertices
  int base = kNone;           // the vertex that is matched to the outside
  std::int64_t half_dual = 0;
  Label label = Label::kFree;
  Edge came_by;  // the edge that gave the label; from is kNone at a root
};

// Works on weights (largest cost - cost), so that a cheapest perfect matching is a heaviest one. The slack of
// an edge between two top nodes is dual(u) + dual(v) - 2 weight, never negative, 0 along trees and pairs.
class Matcher {
 public:
  explicit Matcher(const CostTable& costs)
      : costs_(costs),
        size_(costs.size()),
        nodes_(at(size_)),
        dual_(at(size_), 0),
        top_(at(size_)),
        mate_(at(size_), kNone),
        nearest_(at(size_), kNone) {
    for (int u = 0; u < size_; ++u) {
      nodes_[at(u)].base = u;
      top_[at(u)] = u;
      for (int v = 0; v < size_; ++v) most_ = std::max(most_, u == v ? 0 : costs_.at(u, v));
    }
    std::int64_t heaviest = 0;
    for (int u = 0; u < size_; ++u) {
      for (int v = 0; v < u; ++v) {
        if (edge(u, v)) heaviest = std::max(heaviest, weight(u, v));
      }
    }
    std::fill(dual_.begin(), dual_.end(), heaviest);
  }

  std::optional<PerfectMatching> run() {
    if (size_ % 2 != 0) return {};
    for (int pairs = 0; pairs < size_ / 2; ++pairs) {
      if (!stage()) return {};
    }
    return answer();
  }

 private:
  static std::size_t at(int index) { return static_cast<std::size_t>(index); }
  [[nodiscard]] bool edge(int u, int v) const { return u != v && costs_.at(u, v) != kNoEdge; }
  [[nodiscard]] std::int64_t weight(int u, int v) const { return most_ - costs_.at(u, v); }
  [[nodiscard]] std::int64_t slack(int u, int v) const { return dual_[at(u)] + dual_[at(v)] - 2 * weight(u, v); }
  [[nodiscard]] bool is_vertex(int node) const { return node < size_; }
  Node& top_of(int vertex) { return nodes_[at(top_[at(vertex)])]; }

  void collect(int node, std::vector<int>& vertices) const {
    if (is_vertex(node)) {
      vertices.push_back(node);
      return;
    }
    for (const int child : nodes_[at(node)].children) collect(child, vertices);
  }
  [[nodiscard]] std::vector<int> vertices_of(int node) const {
    std::vector<int> vertices;
    collect(node, vertices);
    return vertices;
  }

  // Keeps for v the outer vertex of another node with the least slack to it. All slacks towards v change
  // alike when duals move, so the choice stays right until labels change.
  void offer(int outer, int v) {
    if (!edge(outer, v) || top_[at(outer)] == top_[at(v)]) return;
    const int held = nearest_[at(v)];
    if (held == kNone || slack(outer, v) < slack(held, v)) nearest_[at(v)] = outer;
  }

  void label_outer(int node, Edge came_by) {
    nodes_[at(node)].label = Label::kOuter;
    nodes_[at(node)].came_by = came_by;
    for (const int u : vertices_of(node)) {
      for (int v = 0; v < size_; ++v) offer(u, v);
    }
  }

  // The pair (node, its partner) joins a tree: the node inner, the partner outer.
  void grow(Edge by) {
    Node& inner = top_of(by.to);
    inner.label = Label::kInner;
    inner.came_by = by;
    const int partner = mate_[at(inner.base)];
    label_outer(top_[at(partner)], {inner.base, partner});
  }

  [[nodiscard]] int parent(int node) const {
    const int vertex = nodes_[at(node)].came_by.from;
    return vertex == kNone ? kNone : top_[at(vertex)];
  }

  [[nodiscard]] std::vector<int> path_to_root(int node) const {
    std::vector<int> path;
    for (; node != kNone; node = parent(node)) path.push_back(node);
    return path;
  }

  // The odd cycle closed by an edge between two outer nodes of one tree becomes one outer node.
  // one, other: the paths to the root from the two ends, without what they share but its first node.
  void shrink(Edge closing, const std::vector<int>& one, const std::vector<int>& other, int shared) {
    Node blossom;
    blossom.children.push_back(shared);
    for (auto node = one.rbegin(); node != one.rend(); ++node) {
      blossom.links.push_back(nodes_[at(*node)].came_by);
      blossom.children.push_back(*node);
    }
    blossom.links.push_back(closing);
    for (const int node : other) {
      blossom.children.push_back(node);
      const Edge down = nodes_[at(node)].came_by;
      blossom.links.push_back({down.to, down.from});
    }
    blossom.base = nodes_[at(shared)].base;
    blossom.label = Label::kOuter;
    blossom.came_by = nodes_[at(shared)].came_by;
    std::vector<int> newly_outer;
    for (const int child : blossom.children) {
      if (nodes_[at(child)].label == Label::kInner) collect(child, newly_outer);
    }
    const int name = new_name();
    nodes_[at(name)] = std::move(blossom);
    const std::vector<int> members = vertices_of(name);
    for (const int v : members) top_[at(v)] = name;
    for (const int v : members) {
      nearest_[at(v)] = kNone;
      for (int u = 0; u < size_; ++u) {
        if (top_of(u).label == Label::kOuter) offer(u, v);
      }
    }
    for (const int u : newly_outer) {
      for (int v = 0; v < size_; ++v) offer(u, v);
    }
  }

  int new_name() {
    if (!spare_names_.empty()) {
      const int name = spare_names_.back();
      spare_names_.pop_back();
      return name;
    }
    nodes_.emplace_back();
    return static_cast<int>(nodes_.size()) - 1;
  }

  [[nodiscard]] int child_holding(const Node& blossom, int vertex) const {
    for (std::size_t k = 0; k < blossom.children.size(); ++k) {
      const std::vector<int> members = vertices_of(blossom.children[k]);
      if (std::find(members.begin(), members.end(), vertex) != members.end()) return static_cast<int>(k);
    }
    return kNone;
  }

  // An inner blossom whose dual has come down to 0 opens: the even way round from the child where the tree
  // comes in to the base stays in the tree, the other children leave it.
  void open(int name) {
    const Node blossom = std::move(nodes_[at(name)]);
    nodes_[at(name)] = Node{};
    spare_names_.push_back(name);
    for (const int child : blossom.children) {
      nodes_[at(child)].label = Label::kFree;
      nodes_[at(child)].came_by = Edge{};
      for (const int v : vertices_of(child)) top_[at(v)] = child;
    }
    const int count = static_cast<int>(blossom.children.size());
    int k = child_holding(blossom, blossom.came_by.to);
    const bool backwards = k % 2 == 0;
    Edge by = blossom.came_by;
    while (true) {
      Node& inner = nodes_[at(blossom.children[at(k)])];
      inner.label = Label::kInner;
      inner.came_by = by;
      if (k == 0) return;
      const int partner = mate_[at(inner.base)];
      label_outer(top_[at(partner)], {inner.base, partner});
      const Edge link = blossom.links[at(backwards ? k - 2 : k + 1)];
      by = backwards ? Edge{link.to, link.from} : link;
      k = backwards ? k - 2 : (k + 2) % count;
    }
  }

  // Turns a blossom so that the vertex becomes its base, matching the rest of it along the cycle.
  void make_base(int node, int vertex) {
    if (is_vertex(node)) return;
    Node& blossom = nodes_[at(node)];
    const int k = child_holding(blossom, vertex);
    make_base(blossom.children[at(k)], vertex);
    std::rotate(blossom.children.begin(), blossom.children.begin() + k, blossom.children.end());
    std::rotate(blossom.links.begin(), blossom.links.begin() + k, blossom.links.end());
    for (std::size_t i = 1; i + 1 < blossom.children.size(); i += 2) {
      const Edge link = blossom.links[i];
      make_base(blossom.children[i], link.from);
      make_base(blossom.children[i + 1], link.to);
      mate_[at(link.from)] = link.to;
      mate_[at(link.to)] = link.from;
    }
    blossom.base = vertex;
  }

  // Changes pairs along the way from an outer vertex to its root.
  void flip(int outer, int partner) {
    while (true) {
      const int node = top_[at(outer)];
      make_base(node, outer);
      mate_[at(outer)] = partner;
      const int inner_vertex = nodes_[at(node)].came_by.from;
      if (inner_vertex == kNone) return;
      const int inner = top_[at(inner_vertex)];
      const Edge by = nodes_[at(inner)].came_by;
      make_base(inner, by.to);
      mate_[at(by.to)] = by.from;
      outer = by.from;
      partner = by.to;
    }
  }

  // An edge between two outer nodes: a longer matching (true), or a new blossom.
  bool join(Edge by) {
    std::vector<int> one = path_to_root(top_[at(by.from)]);
    std::vector<int> other = path_to_root(top_[at(by.to)]);
    if (one.back() != other.back()) {
      flip(by.from, by.to);
      flip(by.to, by.from);
      return true;
    }
    int shared = kNone;
    while (!one.empty() && !other.empty() && one.back() == other.back()) {
      shared = one.back();
      one.pop_back();
      other.pop_back();
    }
    shrink(by, one, other, shared);
    return false;
  }

  struct Event {
    std::int64_t step = kFar;
    int vertex = kNone;   // its nearest outer vertex has come up to it, or
    int blossom = kNone;  // this inner blossom opens
  };

  Event next_event() {
    Event next;
    for (int v = 0; v < size_; ++v) {
      const int u = nearest_[at(v)];
      const Label label = top_of(v).label;
      if (u == kNone || label == Label::kInner) continue;
      // Two outer ends approach each other twice as fast; their slack is even, all outer duals being alike mod 2.
      const std::int64_t step = label == Label::kOuter ? slack(u, v) / 2 : slack(u, v);
      if (step < next.step) next = {step, v, kNone};
    }
    for (int v = 0; v < size_; ++v) {
      const int node = top_[at(v)];
      if (is_vertex(node) || nodes_[at(node)].label != Label::kInner) continue;
      if (nodes_[at(node)].half_dual < next.step) next = {nodes_[at(node)].half_dual, kNone, node};
    }
    return next;
  }

  void move_duals(std::int64_t step) {
    std::vector<bool> moved(nodes_.size(), false);
    for (int v = 0; v < size_; ++v) {
      const int name = top_[at(v)];
      Node& node = nodes_[at(name)];
      if (node.label == Label::kFree) continue;
      const std::int64_t outward = node.label == Label::kOuter ? step : -step;
      dual_[at(v)] -= outward;
      if (!is_vertex(name) && !moved[at(name)]) node.half_dual += outward;
      moved[at(name)] = true;
    }
  }

  // One more pair, or false when there can be none.
  bool stage() {
    std::fill(nearest_.begin(), nearest_.end(), kNone);
    for (int v = 0; v < size_; ++v) {
      top_of(v).label = Label::kFree;
      top_of(v).came_by = Edge{};
    }
    for (int v = 0; v < size_; ++v) {
      if (mate_[at(v)] == kNone) label_outer(top_[at(v)], Edge{});
    }
    while (true) {
      const Event event = next_event();
      if (event.step == kFar) return false;
      move_duals(event.step);
      if (event.blossom != kNone) {
        open(event.blossom);
        continue;
      }
      const Edge by{nearest_[at(event.vertex)], event.vertex};
      if (top_of(event.vertex).label == Label::kFree) {
        grow(by);
      } else if (join(by)) {
        return true;
      }
    }
  }

  // Adds the dual of a blossom, and of those inside it, to the edges and the bound they belong to.
  void account(int node, PerfectMatching& out) {
    if (is_vertex(node)) return;
    const std::int64_t dual = 2 * nodes_[at(node)].half_dual;
    const std::vector<int> members = vertices_of(node);
    heavy_bound_ += dual * static_cast<std::int64_t>((members.size() - 1) / 2);
    for (const int u : members) {
      for (const int v : members) {
        if (u < v && edge(u, v)) out.reduced.set(u, v, out.reduced.at(u, v) + dual);
      }
    }
    for (const int child : nodes_[at(node)].children) account(child, out);
  }

  PerfectMatching answer() {
    PerfectMatching out;
    out.mate = mate_;
    out.reduced = CostTable(size_);
    heavy_bound_ = 0;
    for (int u = 0; u < size_; ++u) {
      heavy_bound_ += dual_[at(u)];
      if (u < mate_[at(u)]) out.cost += costs_.at(u, mate_[at(u)]);
      for (int v = 0; v < u; ++v) {
        if (edge(u, v)) out.reduced.set(u, v, slack(u, v));
      }
    }
    std::vector<bool> seen(nodes_.size(), false);
    for (int v = 0; v < size_; ++v) {
      if (!seen[at(top_[at(v)])]) account(top_[at(v)], out);
      seen[at(top_[at(v)])] = true;
    }
    out.twice_bound = most_ * size_ - heavy_bound_;
    return out;
  }

  const CostTable& costs_;
  int size_;
  std::int64_t most_ = 0;
  std::vector<Node> nodes_;
  std::vector<std::int64_t> dual_;
  std::vector<int> top_;  // the outermost node of each vertex
  std::vector<int> mate_;
  std::vector<int> nearest_;  // see offer()
  std::vector<int> spare_names_;
  std::int64_t heavy_bound_ = 0;  // dual value in the terms of weights
};

}  // namespace

std::optional<PerfectMatching> cheapest_perfect_matching(const CostTable& costs) { return Matcher(costs).run(); }

}  // namespace lanework::people
