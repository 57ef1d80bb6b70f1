#include "core/plan/problem.h"

#include <algorithm>

#include "core/plan/constants.h"

namespace lanework::plan {

const char* load_words(Load load) {
  switch (load) {
    case Load::kContacts:
      return "contacts";
    case Load::kEccentric:
      return "eccentric repetitions";
    case Load::kHardRunning:
      return "hard-running metres";
    case Load::kNewDrills:
      return "new drills";
  }
  return "";
}

std::int64_t shortfall_cost(const Group& group, int credits) {
  const int missing = std::max(0, group.target - credits);
  const int second_half = std::max(0, missing - group.target / 2);
  return group.weight * (missing + (kSecondHalfCounts - 1) * second_half);
}

Evaluation evaluate(const Problem& problem, const Choice& choice) {
  Evaluation out;
  std::vector<int> credits(problem.groups.size(), 0);
  int last_formation = -1;
  bool any = false;
  bool pins_kept = true;
  for (std::size_t i = 0; i < problem.drills.size(); ++i) {
    const ProblemDrill& drill = problem.drills[i];
    if (choice[i] < 0) {
      out.objective.changes += drill.left_out;
      pins_kept = pins_kept && !drill.pinned;
      continue;
    }
    any = true;
    const Option& option = drill.options[static_cast<std::size_t>(choice[i])];
    const int formation = static_cast<int>(drill.formation);
    if (last_formation >= 0) {
      out.seconds += problem.change[static_cast<std::size_t>(last_formation)][static_cast<std::size_t>(formation)];
    }
    last_formation = formation;
    out.seconds += option.seconds;
    out.objective.changes += option.changes;
    out.objective.preference += option.preference;
    credits[static_cast<std::size_t>(drill.group)] += option.credits;
    for (std::size_t l = 0; l < kLoads; ++l) out.loads[l] += option.loads[l];
  }
  for (std::size_t g = 0; g < problem.groups.size(); ++g) {
    out.objective.shortfall += shortfall_cost(problem.groups[g], credits[g]);
  }
  for (const FamilyDemand& family : problem.families) {
    const bool covered = std::any_of(family.groups.begin(), family.groups.end(),
                                     [&](int g) { return credits[static_cast<std::size_t>(g)] > 0; });
    if (family.required && !covered) ++out.objective.uncovered;
  }
  out.feasible = any && pins_kept && out.seconds <= problem.budget;
  for (std::size_t l = 0; l < kLoads; ++l) out.feasible = out.feasible && out.loads[l] <= problem.ceiling[l];
  return out;
}

}  // namespace lanework::plan
