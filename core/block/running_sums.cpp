#include "core/block/running_sums.h"

#include <algorithm>
#include <cstdlib>

namespace lanework::block {
namespace {

// One drill too many, or one hard session too close, weighs like this many steps too long.
constexpr std::int64_t kOneTooMany = 20;

std::int64_t excess(int used, int ceiling) {
  if (used <= ceiling) return 0;
  // In hundredths of the ceiling, so that loads of every unit weigh alike.
  return 1 + std::int64_t{100} * (used - ceiling) / std::max(1, ceiling);
}

}  // namespace

RunningSums::RunningSums(const Problem& problem, const Plan& plan)
    : p_(&problem),
      plan_(empty_plan(problem)),
      sessions_(problem.sessions.size()),
      taken_(problem.sessions.size()),
      covering_(problem.sessions.size(), std::vector<int>(problem.families.size(), 0)),
      week_loads_(problem.weeks.size()),
      week_first_uses_(problem.weeks.size(), 0),
      members_(static_cast<std::size_t>(problem.spells)),
      spell_sessions_(static_cast<std::size_t>(problem.spells)),
      family_size_(static_cast<std::size_t>(problem.spells), std::vector<int>(problem.families.size(), 0)),
      in_(static_cast<std::size_t>(problem.spells), 0),
      close_of_(problem.sessions.size()),
      first_use_(problem.drills.size(), -1) {
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    spell_sessions_[static_cast<std::size_t>(problem.sessions[s].spell)].push_back(static_cast<int>(s));
  }
  for (const auto& [a, b] : problem.close) {
    close_of_[static_cast<std::size_t>(a)].push_back(b);
    close_of_[static_cast<std::size_t>(b)].push_back(a);
  }
  for (std::size_t p = 0; p < members_.size(); ++p) {
    for (std::size_t d = 0; d < problem.drills.size(); ++d) {
      if (plan_.sets[p][d] == 0) continue;
      members_[p].push_back(static_cast<int>(d));
      ++family_size_[p][family_of(d)];
      // A required family that the routine lacks: the empty plan, too, brings a drill of it in.
      if (p > 0 || problem.drills[d].current) continue;
      ++in_[p];
      value_ -= problem.swap;
    }
  }
  // Everything as in the empty plan; then the plan's own sets and uses are brought in one by one.
  for (std::size_t w = 0; w < problem.weeks.size(); ++w) {
    credits_.push_back(problem.weeks[w].fixed);
    for (std::size_t f = 0; f < problem.families.size(); ++f)
      value_ += worth(problem.families[f], problem.weeks[w].target[f], problem.weeks[w].fixed[f]);
  }
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    for (const Family& family : problem.families) value_ -= family.required ? problem.uncovered : 0;
    const auto p = static_cast<std::size_t>(problem.sessions[s].spell);
    for (const int d : members_[p]) {
      const auto drill = static_cast<std::size_t>(d);
      if (!kind_of(s).options[drill].empty()) value_ -= problem.drills[drill].left_out;
    }
  }
  for (std::size_t p = 0; p < members_.size(); ++p) broken_ += set_broken(p);
  for (std::size_t p = 0; p < members_.size(); ++p) {
    for (std::size_t d = 0; d < problem.drills.size(); ++d) {
      if ((plan.sets[p][d] != 0) != member(p, d)) set_member(p, d, plan.sets[p][d] != 0);
    }
  }
  for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
    for (std::size_t d = 0; d < problem.drills.size(); ++d) {
      if (plan.choice[s][d] >= 0) set_option(s, d, plan.choice[s][d]);
    }
  }
}

std::size_t RunningSums::family_of(std::size_t d) const {
  return static_cast<std::size_t>(p_->groups[static_cast<std::size_t>(p_->drills[d].group)].family);
}

const Kind& RunningSums::kind_of(std::size_t s) const {
  return p_->kinds[static_cast<std::size_t>(p_->sessions[s].kind)];
}

std::int64_t RunningSums::session_broken(std::size_t s) const {
  const Session& session = p_->sessions[s];
  const Sums& sums = sessions_[s];
  std::int64_t out = std::max(0, sums.steps - session.budget);
  for (std::size_t l = 0; l < kLoads; ++l) out += excess(sums.loads[l], session.ceiling[l]);
  return out + kOneTooMany * std::max(0, sums.first_uses - p_->most_new_in_session);
}

std::int64_t RunningSums::week_broken(std::size_t w) const {
  const int begun = week_first_uses_[w] + p_->weeks[w].begun;
  std::int64_t out = kOneTooMany * std::max(0, begun - p_->most_new_in_week);
  for (std::size_t l = 0; l < kLoads; ++l) out += excess(week_loads_[w][l], p_->weeks[w].ceiling[l]);
  return out;
}

bool RunningSums::hard_nearby(std::size_t s) const {
  return std::any_of(close_of_[s].begin(), close_of_[s].end(), [&](int other) {
    const auto o = static_cast<std::size_t>(other);
    return is_hard(p_->sessions[o], sessions_[o].loads);
  });
}

std::int64_t RunningSums::pairs_broken(std::size_t s) const {
  if (close_of_[s].empty() || !is_hard(p_->sessions[s], sessions_[s].loads)) return 0;
  std::int64_t out = 0;
  for (const int other : close_of_[s]) {
    const auto o = static_cast<std::size_t>(other);
    if (is_hard(p_->sessions[o], sessions_[o].loads)) out += kOneTooMany;
  }
  return out;
}

std::int64_t RunningSums::set_broken(std::size_t p) const {
  const bool stands = static_cast<int>(p) < p_->begun;
  std::int64_t out = stands ? 0 : std::max(0, in_[p] - most_swaps_of(*p_, p));
  if (p > 0 && !stands) out += std::max(0, p_->least_swaps - in_[p]);
  for (std::size_t f = 0; f < p_->families.size(); ++f) out += std::abs(family_size_[p][f] - p_->families[f].drills);
  return kOneTooMany * out;
}

// Steps of drill d in session s, with the changes into and out of it.
void RunningSums::change_steps(std::size_t s, std::size_t d, int by_option, bool adding) {
  const Kind& kind = kind_of(s);
  std::vector<int>& taken = taken_[s];
  const auto place = std::lower_bound(taken.begin(), taken.end(), static_cast<int>(d));
  const auto form = [&](int drill) {
    return static_cast<std::size_t>(p_->drills[static_cast<std::size_t>(drill)].formation);
  };
  const auto own = static_cast<std::size_t>(p_->drills[d].formation);
  const auto after = place != taken.end() && !adding ? place + 1 : place;
  int steps = kind.options[d][static_cast<std::size_t>(by_option)].steps;
  const bool has_before = place != taken.begin();
  const bool has_after = after != taken.end();
  if (has_before) steps += kind.change[form(*(place - 1))][own];
  if (has_after) steps += kind.change[own][form(*after)];
  if (has_before && has_after) steps -= kind.change[form(*(place - 1))][form(*after)];
  sessions_[s].steps += adding ? steps : -steps;
  if (adding) {
    taken.insert(place, static_cast<int>(d));
  } else {
    taken.erase(place);
  }
}

void RunningSums::move_first_use(std::size_t d) {
  int first = -1;
  for (std::size_t s = 0; s < sessions_.size() && first < 0; ++s) {
    if (plan_.choice[s][d] >= 0) first = static_cast<int>(s);
  }
  const auto count = [&](int session, int by) {
    if (session < 0) return;
    const auto s = static_cast<std::size_t>(session);
    const auto w = static_cast<std::size_t>(p_->sessions[s].week);
    broken_ -= session_broken(s) + week_broken(w);
    sessions_[s].first_uses += by;
    week_first_uses_[w] += by;
    broken_ += session_broken(s) + week_broken(w);
  };
  count(first_use_[d], -1);
  count(first, 1);
  first_use_[d] = first;
}

void RunningSums::set_option(std::size_t s, std::size_t d, int option) {
  const int before = plan_.choice[s][d];
  if (before == option) return;
  const Drill& drill = p_->drills[d];
  const std::vector<Option>& options = kind_of(s).options[d];
  const auto w = static_cast<std::size_t>(p_->sessions[s].week);
  const auto f = static_cast<std::size_t>(p_->groups[static_cast<std::size_t>(drill.group)].family);
  const Family& family = p_->families[f];
  broken_ -= session_broken(s) + week_broken(w) + pairs_broken(s);
  const int target = p_->weeks[w].target[f];
  value_ -= worth(family, target, credits_[w][f]);
  const auto add = [&](int which, int sign) {
    const Option& o = options[static_cast<std::size_t>(which)];
    credits_[w][f] += sign * o.credits;
    for (std::size_t l = 0; l < kLoads; ++l) {
      sessions_[s].loads[l] += sign * o.loads[l];
      week_loads_[w][l] += sign * o.loads[l];
    }
    value_ -= sign * o.departure;
  };
  if (before >= 0) add(before, -1);
  if (option >= 0) add(option, 1);
  if (before >= 0 && option >= 0) {
    sessions_[s].steps +=
        options[static_cast<std::size_t>(option)].steps - options[static_cast<std::size_t>(before)].steps;
  } else {
    const bool adding = option >= 0;
    change_steps(s, d, adding ? option : before, adding);
    value_ += adding ? drill.left_out : -drill.left_out;
    covering_[s][f] += adding ? 1 : -1;
    if (family.required && covering_[s][f] == (adding ? 1 : 0)) value_ += adding ? p_->uncovered : -p_->uncovered;
  }
  value_ += worth(family, target, credits_[w][f]);
  plan_.choice[s][d] = option;
  broken_ += session_broken(s) + week_broken(w) + pairs_broken(s);
  if (drill.unknown && (before < 0) != (option < 0)) move_first_use(d);
}

void RunningSums::count_swap(std::size_t p, std::size_t d, int sign) {
  const bool then = p == 0 ? p_->drills[d].current : member(p - 1, d);
  const bool now = member(p, d);
  if (now && !then) {
    in_[p] += sign;
    value_ -= sign * p_->swap;
  }
}

void RunningSums::set_member(std::size_t p, std::size_t d, bool in) {
  if (member(p, d) == in) return;
  const bool has_next = p + 1 < members_.size();
  broken_ -= set_broken(p) + (has_next ? set_broken(p + 1) : 0);
  count_swap(p, d, -1);
  if (has_next) count_swap(p + 1, d, -1);
  plan_.sets[p][d] = in ? 1 : 0;
  count_swap(p, d, 1);
  if (has_next) count_swap(p + 1, d, 1);
  family_size_[p][family_of(d)] += in ? 1 : -1;
  broken_ += set_broken(p) + (has_next ? set_broken(p + 1) : 0);
  std::vector<int>& members = members_[p];
  const auto place = std::lower_bound(members.begin(), members.end(), static_cast<int>(d));
  if (in) {
    members.insert(place, static_cast<int>(d));
  } else {
    members.erase(place);
  }
  // Every session of the spell now goes without it, or is no longer asked for it.
  for (const int session : spell_sessions_[p]) {
    const auto s = static_cast<std::size_t>(session);
    if (kind_of(s).options[d].empty()) continue;
    value_ += in ? -p_->drills[d].left_out : p_->drills[d].left_out;
  }
}

}  // namespace lanework::block
