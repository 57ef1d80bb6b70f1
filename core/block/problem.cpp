#include "core/block/problem.h"

#include <algorithm>

namespace lanework::block {
namespace {

class Evaluator {
 public:
  Evaluator(const Problem& problem, const Plan& plan) : p_(problem), plan_(plan) {}

  Evaluation run() {
    out_.credits.assign(p_.weeks.size(), std::vector<int>(p_.families.size(), 0));
    for (std::size_t w = 0; w < p_.weeks.size(); ++w) out_.credits[w] = p_.weeks[w].fixed;
    out_.week_loads.assign(p_.weeks.size(), {});
    done_.assign(p_.drills.size(), false);
    for (const Week& week : p_.weeks) new_in_week_.push_back(week.begun);
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) session(s);
    for (const auto& [a, b] : p_.close) {
      if (hard(a) && hard(b)) broken("apart", a);
    }
    for (std::size_t w = 0; w < p_.weeks.size(); ++w) week(w);
    for (int spell = 0; spell < p_.spells; ++spell) sets(spell);
    return std::move(out_);
  }

 private:
  const Problem& p_;
  const Plan& plan_;
  Evaluation out_;
  std::vector<bool> done_;
  std::vector<int> new_in_week_;

  void broken(const char* what, std::size_t where) {
    out_.broken.push_back(std::string(what) + " " + std::to_string(where));
  }
  void broken(const char* what, int where) { broken(what, static_cast<std::size_t>(where)); }

  [[nodiscard]] bool hard(int s) const {
    const auto at = static_cast<std::size_t>(s);
    return is_hard(p_.sessions[at], out_.session_loads[at]);
  }

  void session(std::size_t s) {
    const Session& session = p_.sessions[s];
    const Kind& kind = p_.kinds[static_cast<std::size_t>(session.kind)];
    const auto week = static_cast<std::size_t>(session.week);
    const std::vector<char>& set = plan_.sets[static_cast<std::size_t>(session.spell)];
    std::vector<bool> covered(p_.families.size(), false);
    Loads loads{};
    int steps = 0;
    int fresh = 0;
    int before = -1;
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      const Drill& drill = p_.drills[d];
      const int choice = plan_.choice[s][d];
      if (choice < 0) {
        if (set[d] != 0 && !kind.options[d].empty()) out_.value -= drill.left_out;
        continue;
      }
      if (set[d] == 0) broken("member", s);
      const Option& option = kind.options[d][static_cast<std::size_t>(choice)];
      const int formation = static_cast<int>(drill.formation);
      if (before >= 0) steps += kind.change[static_cast<std::size_t>(before)][static_cast<std::size_t>(formation)];
      before = formation;
      steps += option.steps;
      for (std::size_t l = 0; l < kLoads; ++l) loads[l] += option.loads[l];
      const auto family = static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(drill.group)].family);
      out_.credits[week][family] += option.credits;
      covered[family] = true;
      out_.value -= option.departure;
      if (drill.unknown && !done_[d]) ++fresh;
      done_[d] = true;
    }
    for (std::size_t f = 0; f < p_.families.size(); ++f) {
      if (p_.families[f].required && !covered[f]) out_.value -= p_.uncovered;
    }
    if (steps > session.budget) broken("clock", s);
    if (fresh > p_.most_new_in_session) broken("new in session", s);
    new_in_week_[week] += fresh;
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (loads[l] > session.ceiling[l]) broken("ceiling", s);
      out_.week_loads[week][l] += loads[l];
    }
    out_.session_steps.push_back(steps);
    out_.session_loads.push_back(loads);
  }

  void week(std::size_t w) {
    for (std::size_t f = 0; f < p_.families.size(); ++f)
      out_.value += worth(p_.families[f], p_.weeks[w].target[f], out_.credits[w][f]);
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (out_.week_loads[w][l] > p_.weeks[w].ceiling[l]) broken("week ceiling", w);
    }
    if (new_in_week_[w] > p_.most_new_in_week) broken("new in week", w);
  }

  void sets(int spell) {
    const auto at = static_cast<std::size_t>(spell);
    int in = 0;
    std::vector<int> of_family(p_.families.size(), 0);
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      const bool now = plan_.sets[at][d] != 0;
      const bool then = spell == 0 ? p_.drills[d].current : plan_.sets[at - 1][d] != 0;
      of_family[static_cast<std::size_t>(p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family)] +=
          now ? 1 : 0;
      in += now && !then ? 1 : 0;
    }
    out_.value -= in * p_.swap;
    if (spell >= p_.begun && in > most_swaps_of(p_, at)) broken("swaps", spell);
    if (spell > 0 && spell >= p_.begun && in < p_.least_swaps) broken("fresh", spell);
    // A set that is over is as it was.
    if (spell < p_.begun && !has_session(p_, at)) return;
    for (std::size_t f = 0; f < of_family.size(); ++f) {
      if (of_family[f] != p_.families[f].drills) broken("size", spell);
    }
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      if (must_be(p_.drills[d], at) && plan_.sets[at][d] == 0) broken("pin", spell);
    }
  }
};

}  // namespace

bool has_session(const Problem& problem, std::size_t spell) {
  return std::any_of(problem.sessions.begin(), problem.sessions.end(),
                     [&](const Session& session) { return session.spell == static_cast<int>(spell); });
}

bool is_open(const Problem& problem, std::size_t spell, std::size_t drill) {
  return std::any_of(problem.sessions.begin(), problem.sessions.end(), [&](const Session& session) {
    const Kind& kind = problem.kinds[static_cast<std::size_t>(session.kind)];
    return session.spell == static_cast<int>(spell) && !kind.options[drill].empty();
  });
}

Points worth(const Family& family, int target, int credits) {
  const int full = std::min(credits, target);
  const int less = std::clamp(credits - target, 0, counted_beyond(target));
  return family.weight * (kFullPoints * full + kLessPoints * less);
}

bool is_hard(const Session& session, const Loads& loads) {
  return loads[0] > session.hard[0] || loads[1] > session.hard[1];
}

Evaluation evaluate(const Problem& problem, const Plan& plan) { return Evaluator(problem, plan).run(); }

int bring_in(const Problem& problem, std::size_t spell, std::vector<char>& set, std::size_t drill) {
  const auto family_of = [&](std::size_t d) {
    return static_cast<std::size_t>(problem.groups[static_cast<std::size_t>(problem.drills[d].group)].family);
  };
  int taken = 0;
  std::size_t leaves = set.size();
  int least = 0;
  for (std::size_t d = 0; d < set.size(); ++d) {
    if (set[d] == 0 || family_of(d) != family_of(drill)) continue;
    ++taken;
    if (must_be(problem.drills[d], spell)) continue;
    const int worth_keeping = (is_open(problem, spell, d) ? 2 : 0) + (problem.drills[d].current ? 1 : 0);
    if (leaves < set.size() && worth_keeping > least) continue;
    leaves = d;
    least = worth_keeping;
  }
  set[drill] = 1;
  if (taken < problem.families[family_of(drill)].drills || leaves == set.size()) return -1;
  set[leaves] = 0;
  return static_cast<int>(leaves);
}

Plan empty_plan(const Problem& problem) {
  Plan plan;
  std::vector<char> set;
  for (const Drill& drill : problem.drills) set.push_back(drill.current ? 1 : 0);
  // A required family that the routine lacks gets its first drills.
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    const int f = problem.groups[static_cast<std::size_t>(problem.drills[d].group)].family;
    int have = 0;
    for (std::size_t other = 0; other < set.size(); ++other) {
      if (set[other] != 0 && problem.groups[static_cast<std::size_t>(problem.drills[other].group)].family == f) ++have;
    }
    if (have < problem.families[static_cast<std::size_t>(f)].drills) set[d] = 1;
  }
  for (std::size_t p = 0; p < static_cast<std::size_t>(problem.spells); ++p) {
    for (std::size_t d = 0; d < set.size(); ++d) {
      if (must_be(problem.drills[d], p) && set[d] == 0) bring_in(problem, p, set, d);
    }
    plan.sets.push_back(set);
  }
  plan.choice.assign(problem.sessions.size(), std::vector<int>(problem.drills.size(), -1));
  return plan;
}

}  // namespace lanework::block
