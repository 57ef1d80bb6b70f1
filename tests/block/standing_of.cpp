#include "tests/block/standing_of.h"

#include <algorithm>

namespace lanework::block {
namespace {

StandingSession frame_of(const session::Evening& evening) {
  StandingSession out;
  out.date = evening.date;
  out.start = evening.start;
  out.slot = evening.slot;
  out.turnout = evening.turnout;
  out.days_to_match = evening.days_to_match;
  return out;
}

}  // namespace

Standing standing_of(const Outline& outline, const Built& built, const Plan& plan) {
  Standing out;
  const Problem& p = built.problem;
  for (const std::vector<char>& set : plan.sets) {
    std::vector<int>& drills = out.sets.emplace_back();
    for (std::size_t d = 0; d < set.size(); ++d) {
      if (set[d] != 0) drills.push_back(p.drills[d].drill);
    }
  }
  for (const FixedSession& fixed : built.fixed) {
    StandingSession session = frame_of(outline.evenings[fixed.evening]);
    session.match_day = true;
    for (const session::Item& item : fixed.session.items)
      session.items.push_back({item.drill, item.rung, item.dose, 0});
    out.sessions.push_back(std::move(session));
  }
  for (std::size_t s = 0; s < p.sessions.size(); ++s) {
    StandingSession session = frame_of(outline.evenings[built.evening_of[s]]);
    session.budget = p.sessions[s].budget;
    const Kind& kind = p.kinds[static_cast<std::size_t>(p.sessions[s].kind)];
    for (std::size_t d = 0; d < p.drills.size(); ++d) {
      if (plan.choice[s][d] < 0) continue;
      const Option& option = kind.options[d][static_cast<std::size_t>(plan.choice[s][d])];
      session.items.push_back({p.drills[d].drill, option.rung, option.dose, option.steps});
    }
    out.sessions.push_back(std::move(session));
  }
  std::sort(out.sessions.begin(), out.sessions.end(), [](const StandingSession& a, const StandingSession& b) {
    return a.date != b.date ? a.date < b.date : a.start < b.start;
  });
  out.credits = evaluate(p, plan).credits;
  for (const Week& week : p.weeks) out.targets.push_back(week.target);
  return out;
}

}  // namespace lanework::block
