#include "core/block/restrict.h"

#include <algorithm>

namespace lanework::block {

Restricted restrict_to(const Problem& problem, const Sets& sets) {
  Restricted out;
  Problem& r = out.problem;
  r = problem;
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    const auto has = [&](const std::vector<char>& set) { return set[d] != 0; };
    if (std::any_of(sets.begin(), sets.end(), has)) out.drill_of.push_back(d);
  }
  r.drills.clear();
  for (const std::size_t d : out.drill_of) {
    r.drills.push_back(problem.drills[d]);
    // Counted as there already: the swaps are behind us.
    r.drills.back().current = true;
  }
  // One kind for each kind and spell: a drill outside the spell's set is not open in it.
  const auto spells = static_cast<std::size_t>(problem.spells);
  r.kinds.clear();
  for (const Kind& kind : problem.kinds) {
    for (std::size_t p = 0; p < spells; ++p) {
      Kind narrow;
      narrow.change = kind.change;
      for (const std::size_t d : out.drill_of) {
        narrow.options.push_back(sets[p][d] != 0 ? kind.options[d] : std::vector<Option>{});
      }
      r.kinds.push_back(std::move(narrow));
    }
  }
  for (Session& session : r.sessions) session.kind = session.kind * problem.spells + session.spell;
  for (Family& family : r.families) family.drills = 0;
  for (const Drill& drill : r.drills) {
    ++r.families[static_cast<std::size_t>(r.groups[static_cast<std::size_t>(drill.group)].family)].drills;
  }
  r.begun = 0;
  r.first_swaps = 0;
  r.least_swaps = 0;
  return out;
}

Plan Restricted::widened(const Plan& plan, const Sets& sets, std::size_t drills) const {
  Plan out;
  out.sets = sets;
  out.choice.assign(plan.choice.size(), std::vector<int>(drills, -1));
  for (std::size_t s = 0; s < plan.choice.size(); ++s) {
    for (std::size_t d = 0; d < drill_of.size(); ++d) out.choice[s][drill_of[d]] = plan.choice[s][d];
  }
  return out;
}

Plan Restricted::narrowed(const Plan& plan) const {
  Plan out = empty_plan(problem);
  for (std::size_t s = 0; s < plan.choice.size(); ++s) {
    for (std::size_t d = 0; d < drill_of.size(); ++d) out.choice[s][d] = plan.choice[s][drill_of[d]];
  }
  return out;
}

}  // namespace lanework::block
