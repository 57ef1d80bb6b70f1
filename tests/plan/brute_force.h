// The best session by trying every one: for problems of a few thousand choices.
#pragma once

#include <optional>

#include "core/plan/problem.h"

namespace lanework::plan {

inline std::optional<std::int64_t> brute_force(const Problem& problem) {
  std::optional<std::int64_t> best;
  Choice choice(problem.drills.size(), -1);
  while (true) {
    const Evaluation e = evaluate(problem, choice);
    if (e.feasible && (!best || packed(e.objective) < *best)) best = packed(e.objective);
    std::size_t i = 0;
    while (i < choice.size() && ++choice[i] == static_cast<int>(problem.drills[i].options.size())) choice[i++] = -1;
    if (i == choice.size()) return best;
  }
}

}  // namespace lanework::plan
