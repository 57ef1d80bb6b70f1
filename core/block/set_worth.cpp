#include "core/block/set_worth.h"

#include <algorithm>

namespace lanework::block {

SetWorth::SetWorth(const Problem& problem)
    : p_(problem),
      weeks_(problem),
      alike_(first_alike(problem)),
      weeks_of_(static_cast<std::size_t>(problem.spells)),
      all_(problem.drills.size(), 1) {
  for (std::size_t w = 0; w < problem.weeks.size(); ++w)
    weeks_of_[static_cast<std::size_t>(problem.weeks[w].spell)].push_back(w);
}

const WeekAnswer& SetWorth::week(std::size_t w, const std::vector<char>& set, const WeekEffort& effort) {
  const auto [at, first] = known_.try_emplace({alike_[w], set}, Known{{}, -1});
  Known& known = at->second;
  const bool proven = !first && known.answer.bound_fine <= known.answer.value * kFine;
  if (proven || known.splits >= effort.splits) return known.answer;
  WeekAnswer answer = weeks_.solve(alike_[w], set, all_, false, effort);
  if (!first) {
    answer.bound_fine = std::min(answer.bound_fine, known.answer.bound_fine);
    if (known.answer.value > answer.value) {
      answer.value = known.answer.value;
      answer.choice = std::move(known.answer.choice);
    }
  }
  known = {std::move(answer), effort.splits};
  return known.answer;
}

SpellWorth SetWorth::of(std::size_t spell, const std::vector<char>& set, const WeekEffort& effort) {
  SpellWorth out;
  for (const std::size_t w : weeks_of_[spell]) {
    const WeekAnswer& answer = week(w, set, effort);
    out.value += answer.value;
    out.bound_fine += answer.bound_fine;
  }
  return out;
}

std::int64_t SetWorth::bound(std::size_t spell, const std::vector<char>& set, int rounds) {
  std::int64_t sum = 0;
  std::map<std::size_t, std::int64_t> seen;
  for (const std::size_t w : weeks_of_[spell]) {
    const auto [at, first] = seen.try_emplace(alike_[w], 0);
    if (first) at->second = weeks_.bound(alike_[w], set, rounds);
    sum += at->second;
  }
  return sum;
}

// Notes what is done; false where too much of it is new.
bool SetWorth::keeps_new_limits(std::size_t w, const WeekAnswer& answer, std::vector<char>& done) const {
  int in_week = p_.weeks[w].begun;
  bool keeps = true;
  for (const std::vector<int>& session : answer.choice) {
    int in_session = 0;
    for (std::size_t d = 0; d < session.size(); ++d) {
      if (session[d] < 0 || done[d] != 0) continue;
      done[d] = 1;
      in_session += p_.drills[d].unknown ? 1 : 0;
    }
    in_week += in_session;
    keeps = keeps && in_session <= p_.most_new_in_session;
  }
  return keeps && in_week <= p_.most_new_in_week;
}

bool SetWorth::is_hard_choice(std::size_t session, const std::vector<int>& choice) const {
  const Session& at = p_.sessions[session];
  Loads loads{};
  for (std::size_t d = 0; d < choice.size(); ++d) {
    if (choice[d] < 0) continue;
    const Option& option = p_.kinds[static_cast<std::size_t>(at.kind)].options[d][static_cast<std::size_t>(choice[d])];
    for (std::size_t l = 0; l < kLoads; ++l) loads[l] += option.loads[l];
  }
  return is_hard(at, loads);
}

bool SetWorth::first_must_be_light(std::size_t w, const Plan& plan) const {
  const std::vector<int>& sessions = weeks_.sessions_of(w);
  if (sessions.empty()) return false;
  return std::any_of(p_.close.begin(), p_.close.end(), [&](const std::pair<int, int>& pair) {
    const auto before = static_cast<std::size_t>(pair.first);
    return pair.second == sessions.front() && p_.sessions[before].week != static_cast<int>(w) &&
           is_hard_choice(before, plan.choice[before]);
  });
}

Plan SetWorth::plan_of(const Sets& sets, const WeekEffort& effort) {
  Plan plan = empty_plan(p_);
  plan.sets = sets;
  std::vector<char> done(p_.drills.size(), 0);
  for (std::size_t d = 0; d < done.size(); ++d) done[d] = p_.drills[d].unknown ? 0 : 1;
  for (std::size_t w = 0; w < p_.weeks.size(); ++w) {
    const std::vector<char>& set = sets[static_cast<std::size_t>(p_.weeks[w].spell)];
    const bool light = first_must_be_light(w, plan);
    std::vector<char> done_then = done;
    const WeekAnswer* answer = &week(w, set, effort);
    WeekAnswer limited;
    const std::vector<int>& sessions = weeks_.sessions_of(w);
    const bool too_hard = light && is_hard_choice(static_cast<std::size_t>(sessions.front()), answer->choice.front());
    if (!keeps_new_limits(w, *answer, done_then) || too_hard) {
      limited = weeks_.solve(w, set, done, light, effort);
      answer = &limited;
      done_then = done;
      keeps_new_limits(w, limited, done_then);
    }
    done = std::move(done_then);
    for (std::size_t i = 0; i < sessions.size(); ++i)
      plan.choice[static_cast<std::size_t>(sessions[i])] = answer->choice[i];
  }
  return plan;
}

}  // namespace lanework::block
