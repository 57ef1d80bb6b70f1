#include "core/people/fewest_alone.h"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/max_cardinality_matching.hpp>

namespace lanework::people {

int largest_matching(const CostTable& differences, std::int64_t most) {
  using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS>;
  using Vertex = boost::graph_traits<Graph>::vertex_descriptor;
  const int size = differences.size();
  Graph graph(static_cast<std::size_t>(size));
  for (int u = 0; u < size; ++u) {
    for (int v = u + 1; v < size; ++v) {
      const std::int64_t difference = differences.at(u, v);
      if (difference != kNoEdge && difference <= most) {
        boost::add_edge(static_cast<Vertex>(u), static_cast<Vertex>(v), graph);
      }
    }
  }
  std::vector<Vertex> mate(static_cast<std::size_t>(size));
  boost::edmonds_maximum_cardinality_matching(graph, mate.data());
  return static_cast<int>(boost::matching_size(graph, mate.data()));
}

std::int64_t least_threshold(const CostTable& differences, const std::vector<std::int64_t>& candidates) {
  std::size_t low = 0;
  std::size_t high = candidates.size() - 1;
  while (low < high) {
    const std::size_t middle = low + (high - low) / 2;
    if (2 * largest_matching(differences, candidates[middle]) == differences.size()) {
      high = middle;
    } else {
      low = middle + 1;
    }
  }
  return candidates[low];
}

}  // namespace lanework::people
