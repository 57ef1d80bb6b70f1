// What weeks that are over owe, asked of the weeks after them. docs/model/rolling.md.
#pragma once

#include <vector>

namespace lanework::block {

// Quarter-credits by family.
struct WeekAccount {
  std::vector<int> promised;  // as planned
  std::vector<int> given;     // as they came about
  bool over = false;          // no session of it is to come
  bool has_session = false;   // other than on match days
};

// Targets by week and family. What an over week gave less than it promised, up to its own target, goes to the next two
// weeks that have a session, the larger half first; no target rises by more than half of 'base'.
std::vector<std::vector<int>> carried_targets(const std::vector<int>& base, const std::vector<WeekAccount>& weeks);

}  // namespace lanework::block
