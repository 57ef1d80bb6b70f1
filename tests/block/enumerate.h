// Every plan of a tiny block problem, straight from the definitions.
#pragma once

#include <functional>
#include <optional>
#include <utility>

#include "core/block/problem.h"

namespace lanework::block {

// Every choice of options for one session: calls with the choice.
inline void each_choice(const Kind& kind, std::vector<int>& choice, std::size_t d,
                        const std::function<void(const std::vector<int>&)>& what) {
  if (d == kind.options.size()) {
    what(choice);
    return;
  }
  for (int o = -1; o < static_cast<int>(kind.options[d].size()); ++o) {
    choice[d] = o;
    each_choice(kind, choice, d + 1, what);
  }
  choice[d] = -1;
}

// Every set with as many drills of each family as the problem says.
inline void each_set(const Problem& problem, std::vector<char>& set, std::size_t d,
                     const std::function<void(const std::vector<char>&)>& what) {
  if (d == problem.drills.size()) {
    std::vector<int> count(problem.families.size(), 0);
    for (std::size_t i = 0; i < set.size(); ++i) {
      const int f = problem.groups[static_cast<std::size_t>(problem.drills[i].group)].family;
      count[static_cast<std::size_t>(f)] += set[i];
    }
    for (std::size_t f = 0; f < count.size(); ++f) {
      if (count[f] != problem.families[f].drills) return;
    }
    what(set);
    return;
  }
  for (const char in : {char{0}, char{1}}) {
    set[d] = in;
    each_set(problem, set, d + 1, what);
  }
  set[d] = 0;
}

// The most that the sessions are worth with the sets of 'plan', everything kept; empty when there is no way.
inline std::optional<Points> best_with_sets(const Problem& problem, Plan plan) {
  std::optional<Points> best;
  std::function<void(std::size_t)> sessions = [&](std::size_t s) {
    if (s == problem.sessions.size()) {
      const Evaluation evaluation = evaluate(problem, plan);
      if (evaluation.broken.empty() && (!best || evaluation.value > *best)) best = evaluation.value;
      return;
    }
    Kind kind = problem.kinds[static_cast<std::size_t>(problem.sessions[s].kind)];
    for (std::size_t d = 0; d < problem.drills.size(); ++d) {
      if (plan.sets[static_cast<std::size_t>(problem.sessions[s].spell)][d] == 0) kind.options[d].clear();
    }
    std::vector<int> choice(problem.drills.size(), -1);
    each_choice(kind, choice, 0, [&](const std::vector<int>& one) {
      plan.choice[s] = one;
      sessions(s + 1);
    });
    plan.choice[s].assign(problem.drills.size(), -1);
  };
  sessions(0);
  return best;
}

// The most that a plan is worth that keeps everything; empty when there is none.
inline std::optional<Points> enumerate(const Problem& problem) {
  std::optional<Points> best;
  std::vector<char> set(problem.drills.size(), 0);
  Plan plan = empty_plan(problem);
  std::function<void(std::size_t)> spells = [&](std::size_t p) {
    if (p == plan.sets.size()) {
      // What is broken while nothing is done, the sets break.
      if (!evaluate(problem, plan).broken.empty()) return;
      const std::optional<Points> found = best_with_sets(problem, plan);
      if (found && (!best || *found > *best)) best = found;
      return;
    }
    each_set(problem, set, 0, [&](const std::vector<char>& one) {
      plan.sets[p] = one;
      std::vector<char> outer = std::exchange(set, std::vector<char>(problem.drills.size(), 0));
      spells(p + 1);
      set = std::move(outer);
    });
  };
  spells(0);
  return best;
}

}  // namespace lanework::block
