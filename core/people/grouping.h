// The best groups of two, with one of three where it helps, over a table of differences; knows nothing of
// players. docs/model/partners.md has the sets, the levels and the proof of the search for the trio.
#pragma once

#include <cstdint>
#include <vector>

#include "core/people/weighted_matching.h"

namespace lanework::people {

// What is known of each two: their difference (kNoEdge where they may not be together), and whether a group
// with both must do without contact. Positions are the order that decides ties.
struct PairTable {
  explicit PairTable(int size) : difference(size), non_contact(size) {}
  [[nodiscard]] int size() const { return difference.size(); }
  CostTable difference;
  CostTable non_contact;  // 1 or 0, for every two
};

// Levels in their order of weight: fewest alone, least worst difference, least total (with the number of
// non-contact groups below it), the first trio, then the first mates by position.
struct Grouping {
  std::vector<std::vector<int>> groups;  // each ascending; by first member
  std::vector<int> alone;                // ascending
  std::int64_t worst = 0;                // the largest difference within a group
  std::int64_t total = 0;                // the sum of all differences within groups; a trio counts three
  int non_contact_groups = 0;
};

// At most one trio, and only where it leaves fewer alone than pairs do. REQUIRES: differences up to 2^30,
// size up to 200.
Grouping best_grouping(const PairTable& table);

}  // namespace lanework::people
