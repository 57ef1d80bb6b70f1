#include "core/block/replan.h"

#include <algorithm>
#include <array>
#include <limits>
#include <optional>
#include <set>

#include "core/block/branching.h"
#include "core/block/set_limits.h"
#include "core/block/set_worth.h"

namespace lanework::block {
namespace {

// The sessions of some weeks as a problem of their own: what the others do is taken as given.
class TouchedWeeks {
 public:
  TouchedWeeks(const Problem& whole, const Plan& standing, const std::vector<char>& touched, std::size_t coming)
      : whole_(whole), standing_(standing), touched_(touched) {
    problem_ = whole;
    problem_.sessions.clear();
    problem_.kinds.clear();
    problem_.close.clear();
    problem_.begun = problem_.spells;  // sets are given
    for (std::size_t s = 0; s < whole.sessions.size(); ++s) add(s, s == coming ? kComingChange : kLaterChange);
    add_close();
    start_.sets = standing.sets;
  }

  [[nodiscard]] const Problem& problem() const { return problem_; }
  [[nodiscard]] const Plan& start() const { return start_; }
  [[nodiscard]] const std::vector<std::size_t>& sessions() const { return session_of_; }

  // The whole plan with these weeks as found.
  [[nodiscard]] Plan merged(const Plan& found) const {
    Plan out = standing_;
    for (std::size_t s = 0; s < session_of_.size(); ++s) out.choice[session_of_[s]] = found.choice[s];
    return out;
  }

 private:
  const Problem& whole_;
  const Plan& standing_;
  const std::vector<char>& touched_;  // by week
  Problem problem_;
  Plan start_;
  std::vector<std::size_t> session_of_;  // by session of the part: its position in the whole

  [[nodiscard]] bool is_touched(std::size_t s) const {
    return touched_[static_cast<std::size_t>(whole_.sessions[s].week)] != 0;
  }

  void add(std::size_t s, Points price) {
    const Kind& kind = whole_.kinds[static_cast<std::size_t>(whole_.sessions[s].kind)];
    if (!is_touched(s)) {
      for (std::size_t d = 0; d < whole_.drills.size(); ++d) {
        // What another week does anyway before or after is not new because of these.
        if (standing_.choice[s][d] >= 0) problem_.drills[d].unknown = false;
      }
      return;
    }
    Session session = whole_.sessions[s];
    session.kind = static_cast<int>(problem_.kinds.size());
    problem_.kinds.push_back(priced(kind, standing_.choice[s], price));
    problem_.sessions.push_back(session);
    start_.choice.push_back(standing_.choice[s]);
    session_of_.push_back(s);
  }

  // The dose that stands earns the price of a change, another of the same drill nothing, a drill that does not stand
  // pays it: up to a constant, the price of every change.
  static Kind priced(const Kind& kind, const std::vector<int>& stands, Points price) {
    Kind out = kind;
    for (std::size_t d = 0; d < out.options.size(); ++d) {
      for (std::size_t o = 0; o < out.options[d].size(); ++o) {
        if (stands[d] < 0) {
          out.options[d][o].departure += price;
        } else if (static_cast<int>(o) == stands[d]) {
          out.options[d][o].departure -= price;
        }
      }
    }
    return out;
  }

  void add_close() {
    std::vector<int> place(whole_.sessions.size(), -1);
    for (std::size_t i = 0; i < session_of_.size(); ++i) place[session_of_[i]] = static_cast<int>(i);
    const Evaluation stands = evaluate(whole_, standing_);
    for (const auto& [a, b] : whole_.close) {
      const int first = place[static_cast<std::size_t>(a)];
      const int second = place[static_cast<std::size_t>(b)];
      if (first >= 0 && second >= 0) problem_.close.emplace_back(first, second);
      if ((first >= 0) == (second >= 0)) continue;
      const auto fixed = static_cast<std::size_t>(first >= 0 ? b : a);
      if (!is_hard(whole_.sessions[fixed], stands.session_loads[fixed])) continue;
      Session& light = problem_.sessions[static_cast<std::size_t>(std::max(first, second))];
      for (std::size_t l = 0; l < 2; ++l) light.ceiling[l] = std::min(light.ceiling[l], light.hard[l]);
    }
  }
};

class Replanner {
 public:
  Replanner(const Outline& outline, const Built& built, const WeekEffort& effort)
      : outline_(outline),
        built_(built),
        p_(built.problem),
        standing_block_(outline.rolling->standing),
        effort_(effort) {}

  Replanned run() {
    out_.causes.resize(p_.sessions.size());
    place_standing();
    bring_in_fixed();
    replace_closed();
    keep_swap_limits();
    find_causes();
    out_.answer.plan = out_.standing;
    std::vector<char> touched = touched_weeks();
    if (std::any_of(touched.begin(), touched.end(), [](char week) { return week != 0; })) {
      search(touched);
      // Weeks hang together by drills done for the first time: where that goes wrong, all are looked at.
      if (!evaluate(p_, out_.answer.plan).broken.empty()) {
        touched.assign(touched.size(), 1);
        search(touched);
      }
    }
    finish();
    return std::move(out_);
  }

 private:
  const Outline& outline_;
  const Built& built_;
  const Problem& p_;
  const Standing& standing_block_;
  const WeekEffort effort_;
  Replanned out_;

  [[nodiscard]] const session::Evening& evening(std::size_t s) const { return outline_.evenings[built_.evening_of[s]]; }
  [[nodiscard]] const std::vector<Option>& options(std::size_t s, std::size_t d) const {
    return p_.kinds[static_cast<std::size_t>(p_.sessions[s].kind)].options[d];
  }
  [[nodiscard]] int position_of(int catalogue_drill) const {
    for (std::size_t d = 0; d < p_.drills.size(); ++d) {
      if (p_.drills[d].drill == catalogue_drill) return static_cast<int>(d);
    }
    return -1;
  }
  void add_cause(std::size_t s, Cause cause) {
    std::vector<Cause>& causes = out_.causes[s];
    if (std::find(causes.begin(), causes.end(), cause) == causes.end()) causes.push_back(cause);
  }

  // The plan that stands, in the terms of the problem, and what of it cannot be done as it stood.
  void place_standing() {
    Plan& plan = out_.standing;
    plan = empty_plan(p_);
    for (std::size_t p = 0; p < plan.sets.size() && p < standing_block_.sets.size(); ++p) {
      std::fill(plan.sets[p].begin(), plan.sets[p].end(), char{0});
      for (const int drill : standing_block_.sets[p]) {
        if (const int d = position_of(drill); d >= 0) plan.sets[p][static_cast<std::size_t>(d)] = 1;
      }
    }
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) place_session(s);
  }

  void place_session(std::size_t s) {
    const StandingSession* stands = standing_block_.find(evening(s).date, evening(s).start);
    if (stands == nullptr || stands->match_day) return add_cause(s, Cause::kNewSession);
    compare_frame(s, *stands);
    for (const PlannedItem& item : stands->items) {
      const int d = position_of(item.drill);
      int option = d < 0 ? -1 : option_of(s, static_cast<std::size_t>(d), item.rung, item.dose);
      if (option < 0 && d >= 0) {
        option = at_its_new_rung(s, static_cast<std::size_t>(d), item);
        if (option >= 0) add_cause(s, Cause::kRungConfirmed);
      }
      const bool member =
          d >= 0 &&
          out_.standing.sets[static_cast<std::size_t>(p_.sessions[s].spell)][static_cast<std::size_t>(d)] != 0;
      if (option < 0 || !member) {
        add_cause(s, Cause::kDrillClosed);
        continue;
      }
      out_.standing.choice[s][static_cast<std::size_t>(d)] = option;
      const int steps = options(s, static_cast<std::size_t>(d))[static_cast<std::size_t>(option)].steps;
      if (item.steps != 0 && item.steps != steps) add_cause(s, Cause::kTimesChanged);
    }
  }

  [[nodiscard]] int option_of(std::size_t s, std::size_t d, int rung, int dose) const {
    const std::vector<Option>& all = options(s, d);
    for (std::size_t o = 0; o < all.size(); ++o) {
      if (all[o].rung == rung && all[o].dose == dose) return static_cast<int>(o);
    }
    return -1;
  }

  // The same dose, or the next smaller one that a harder rung leaves, where the lead has confirmed another rung.
  [[nodiscard]] int at_its_new_rung(std::size_t s, std::size_t d, const PlannedItem& item) const {
    const auto w = static_cast<std::size_t>(p_.sessions[s].week);
    const catalogue::Drill& drill = outline_.catalogue->drills[static_cast<std::size_t>(item.drill)];
    const auto confirmed = outline_.rungs.find(drill.id);
    const std::vector<Option>& all = options(s, d);
    if (confirmed == outline_.rungs.end() || w >= confirmed->second.size() || all.empty()) return -1;
    const int rung = all.front().rung;  // of the week: all options of a drill have it
    if (confirmed->second[w].empty() || rung == item.rung) return -1;
    for (int dose = item.dose; dose >= 0; --dose) {
      if (const int option = option_of(s, d, rung, dose); option >= 0) return option;
    }
    return -1;
  }

  void compare_frame(std::size_t s, const StandingSession& stands) {
    const session::Evening& now = evening(s);
    if (now.slot != stands.slot) add_cause(s, Cause::kSlotChanged);
    if (now.turnout != stands.turnout) add_cause(s, Cause::kTurnoutChanged);
    if (near_match(now.days_to_match) != near_match(stands.days_to_match)) add_cause(s, Cause::kMatchMoved);
    if (stands.budget && *stands.budget != p_.sessions[s].budget && out_.causes[s].empty())
      add_cause(s, Cause::kSlotChanged);
  }

  // The row of days to the match that holds; further away all days are alike.
  [[nodiscard]] int near_match(std::optional<int> days) const {
    for (const catalogue::MatchDistance& row : outline_.catalogue->limits.match) {
      const bool takes_off = row.contacts_percent < 100 || row.eccentric_percent < 100 ||
                             row.hard_running_percent < 100 || !row.new_drills;
      if (days && row.days == *days && takes_off) return row.days;
    }
    return std::numeric_limits<int>::max();
  }

  [[nodiscard]] int family_of(std::size_t d) const {
    return p_.groups[static_cast<std::size_t>(p_.drills[d].group)].family;
  }

  // What the lead has fixed since comes into the sets to come.
  void bring_in_fixed() {
    std::vector<std::vector<char>>& sets = out_.standing.sets;
    for (std::size_t p = 0; p < sets.size(); ++p) {
      for (std::size_t d = 0; d < p_.drills.size(); ++d) {
        if (!must_be(p_.drills[d], p) || sets[p][d] != 0) continue;
        const int leaves = bring_in(p_, p, sets[p], d);
        const SetSwap swap{leaves, static_cast<int>(d), true};
        if (std::find(out_.swapped.begin(), out_.swapped.end(), swap) == out_.swapped.end())
          out_.swapped.push_back(swap);
        for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
          if (p_.sessions[s].spell != static_cast<int>(p)) continue;
          if (leaves >= 0) out_.standing.choice[s][static_cast<std::size_t>(leaves)] = -1;
          if (!options(s, d).empty()) add_cause(s, Cause::kDrillFixed);
        }
      }
    }
  }

  // Sets stand. A drill that no session to come of its spell is open to gives way to one of its family; the same in
  // every spell, so that no swap is made twice, but for those that must have it.
  void replace_closed() {
    for (std::size_t p = 0; p < out_.standing.sets.size(); ++p) {
      if (!has_session(p_, p)) continue;
      for (std::size_t d = 0; d < p_.drills.size(); ++d) {
        if (out_.standing.sets[p][d] != 0 && !is_open(p_, p, d)) replace(p, d);
      }
    }
  }

  // Of the drills of its family that are open and of none of the sets to come: the first in canonical order that the
  // squad has done before, else the first.
  void replace(std::size_t spell, std::size_t d) {
    std::vector<std::vector<char>>& sets = out_.standing.sets;
    const auto fits = [&](std::size_t other, bool known) {
      if (other == d || family_of(other) != family_of(d) || !is_open(p_, spell, other)) return false;
      if (known && p_.drills[other].unknown) return false;
      return std::none_of(sets.begin() + static_cast<std::ptrdiff_t>(spell), sets.end(),
                          [&](const std::vector<char>& set) { return set[other] != 0; });
    };
    for (const bool known : {true, false}) {
      for (std::size_t other = 0; other < p_.drills.size(); ++other) {
        if (!fits(other, known)) continue;
        for (std::size_t p = spell; p < sets.size(); ++p) {
          if (sets[p][d] == 0 || must_be(p_.drills[d], p)) continue;
          sets[p][d] = 0;
          sets[p][other] = 1;
          drop(p, d, Cause::kDrillClosed);
        }
        out_.swapped.push_back({static_cast<int>(d), static_cast<int>(other), false});
        return;
      }
    }
  }

  // No session of the spell has the drill any more.
  void drop(std::size_t spell, std::size_t d, Cause cause) {
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      if (p_.sessions[s].spell != static_cast<int>(spell) || out_.standing.choice[s][d] < 0) continue;
      out_.standing.choice[s][d] = -1;
      add_cause(s, cause);
    }
  }

  // A drill that comes back may be one swap too many: then another of the spell is not made.
  void keep_swap_limits() {
    std::vector<std::vector<char>>& sets = out_.standing.sets;
    for (std::size_t p = static_cast<std::size_t>(p_.begun); p < sets.size(); ++p) {
      int over = -most_swaps_of(p_, p);
      for (std::size_t d = 0; d < sets[p].size(); ++d) over += sets[p][d] != 0 && sets[p - 1][d] == 0 ? 1 : 0;
      for (std::size_t in = sets[p].size(); in-- > 0 && over > 0;) {
        if (sets[p][in] == 0 || sets[p - 1][in] != 0 || must_be(p_.drills[in], p)) continue;
        for (std::size_t stays = 0; stays < sets[p].size(); ++stays) {
          if (sets[p - 1][stays] == 0 || sets[p][stays] != 0 || family_of(stays) != family_of(in)) continue;
          sets[p][in] = 0;
          sets[p][stays] = 1;
          drop(p, in, Cause::kTooMuch);
          --over;
          break;
        }
      }
    }
  }

  void find_causes() {
    const Evaluation stands = evaluate(p_, out_.standing);
    find_raised_targets(stands);
    find_weeks_behind(stands);
    find_excess(stands);
  }

  // Above what the plan that stands was made for, and above what it gives.
  void find_raised_targets(const Evaluation& stands) {
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      const auto w = static_cast<std::size_t>(p_.sessions[s].week);
      if (w >= standing_block_.targets.size()) continue;
      for (std::size_t f = 0; f < p_.families.size(); ++f) {
        const int target = p_.weeks[w].target[f];
        if (target > standing_block_.targets[w][f] && target > stands.credits[w][f]) add_cause(s, Cause::kTargetRaised);
      }
    }
  }

  // The week as it stands now falls short where it did not before, or further.
  void find_weeks_behind(const Evaluation& stands) {
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      const auto w = static_cast<std::size_t>(p_.sessions[s].week);
      if (w >= standing_block_.credits.size()) continue;
      for (std::size_t f = 0; f < p_.families.size(); ++f) {
        const int target = p_.weeks[w].target[f];
        const int before = std::min(target, standing_block_.credits[w][f]);
        if (std::min(target, stands.credits[w][f]) < before) add_cause(s, Cause::kWeekBehind);
      }
    }
  }

  void find_excess(const Evaluation& stands) {
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      const Session& session = p_.sessions[s];
      const auto w = static_cast<std::size_t>(session.week);
      bool too_much = stands.session_steps[s] > session.budget;
      for (std::size_t l = 0; l < kLoads; ++l) {
        too_much = too_much || stands.session_loads[s][l] > session.ceiling[l] ||
                   stands.week_loads[w][l] > p_.weeks[w].ceiling[l];
      }
      if (too_much) add_cause(s, Cause::kTooMuch);
    }
    for (const auto& [a, b] : p_.close) {
      const auto first = static_cast<std::size_t>(a);
      const auto second = static_cast<std::size_t>(b);
      if (!is_hard(p_.sessions[first], stands.session_loads[first]) ||
          !is_hard(p_.sessions[second], stands.session_loads[second]))
        continue;
      add_cause(first, Cause::kTooMuch);
      add_cause(second, Cause::kTooMuch);
    }
  }

  std::vector<char> touched_weeks() {
    std::vector<char> touched(p_.weeks.size(), 0);
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      if (!out_.causes[s].empty()) touched[static_cast<std::size_t>(p_.sessions[s].week)] = 1;
    }
    for (std::size_t s = 0; s < p_.sessions.size(); ++s) {
      const bool of_touched = touched[static_cast<std::size_t>(p_.sessions[s].week)] != 0;
      if (of_touched && out_.causes[s].empty()) add_cause(s, Cause::kWeekChanged);
    }
    return touched;
  }

  void search(const std::vector<char>& touched) {
    const TouchedWeeks part(p_, out_.standing, touched, 0);
    Plan found = SetWorth(part.problem()).plan_of(out_.standing.sets, effort_);
    if (!evaluate(part.problem(), found).broken.empty()) return;
    take_back_idle(part.problem(), part.start(), found);
    out_.answer.plan = part.merged(found);
  }

  // A change that earns nothing is not made, and neither is one that only gives a family more than its target.
  static void take_back_idle(const Problem& problem, const Plan& stands, Plan& plan) {
    for (bool again = true; again;) {
      again = false;
      for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
        for (std::size_t d = 0; d < problem.drills.size(); ++d) {
          const int now = plan.choice[s][d];
          if (now == stands.choice[s][d]) continue;
          const Points before = without_excess(problem, plan, s, d).value_or(0);
          plan.choice[s][d] = stands.choice[s][d];
          const std::optional<Points> after = without_excess(problem, plan, s, d);
          if (after && *after >= before) {
            again = true;
          } else {
            plan.choice[s][d] = now;
          }
        }
      }
    }
  }

  // What the plan is worth, less what the week's credits of the drill's family beyond the target are; empty where a row
  // is broken.
  static std::optional<Points> without_excess(const Problem& problem, const Plan& plan, std::size_t s, std::size_t d) {
    const Evaluation evaluation = evaluate(problem, plan);
    if (!evaluation.broken.empty()) return {};
    const auto w = static_cast<std::size_t>(problem.sessions[s].week);
    const auto f = static_cast<std::size_t>(problem.groups[static_cast<std::size_t>(problem.drills[d].group)].family);
    const Family& family = problem.families[f];
    const int target = problem.weeks[w].target[f];
    const int credits = evaluation.credits[w][f];
    return evaluation.value - worth(family, target, credits) + worth(family, target, std::min(credits, target));
  }

  void finish() {
    Answer& answer = out_.answer;
    const Evaluation evaluation = evaluate(p_, answer.plan);
    answer.value = evaluation.value;
    answer.feasible = evaluation.broken.empty();
    SetWorth worth(p_);
    answer.bound_fine = -swap_cost(p_, answer.plan.sets) * kFine;
    for (std::size_t p = 0; p < answer.plan.sets.size(); ++p)
      answer.bound_fine += worth.of(p, answer.plan.sets[p], effort_).bound_fine;
    answer.rounds = effort_.rounds;
  }
};

}  // namespace

const StandingSession* Standing::find(Date date, TimeOfDay start) const {
  for (const StandingSession& session : sessions) {
    if (session.date == date && session.start == start) return &session;
  }
  return nullptr;
}

Replanned replan(const Outline& outline, const Built& built, const WeekEffort& effort) {
  return Replanner(outline, built, effort).run();
}

}  // namespace lanework::block
