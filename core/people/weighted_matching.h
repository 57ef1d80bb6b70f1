// Minimum-cost perfect matching in a general graph, by Edmonds' primal-dual method, on whole numbers.
// The answer carries its own proof: dual values whose sum equals the cost. Boost.Graph's own weighted
// matching is not used: its 1.81 does not always end (docs/model/partners.md).
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace lanework::people {

inline constexpr std::int64_t kNoEdge = -1;

// A symmetric table of costs, 0 or more; kNoEdge where two vertices may not be matched.
class CostTable {
 public:
  explicit CostTable(int size);
  [[nodiscard]] int size() const { return size_; }
  [[nodiscard]] std::int64_t at(int u, int v) const { return cells_[index(u, v)]; }
  void set(int u, int v, std::int64_t cost);

 private:
  [[nodiscard]] std::size_t index(int u, int v) const {
    return static_cast<std::size_t>(u) * static_cast<std::size_t>(size_) + static_cast<std::size_t>(v);
  }
  int size_;
  std::vector<std::int64_t> cells_;
};

struct PerfectMatching {
  std::vector<int> mate;         // of each vertex
  std::int64_t cost = 0;         // sum over the pairs
  std::int64_t twice_bound = 0;  // twice the dual bound: no perfect matching costs less; equals 2 * cost
  // Twice the reduced cost of every edge, 0 or more; an edge above 0 stands in no cheapest matching.
  // kNoEdge where there is no edge.
  CostTable reduced{0};
};

// Empty when no perfect matching exists. Costs up to 2^40, sizes up to 1000: no overflow. Time O(n^3),
// repeatable: the order of the vertices decides every tie.
std::optional<PerfectMatching> cheapest_perfect_matching(const CostTable& costs);

}  // namespace lanework::people
