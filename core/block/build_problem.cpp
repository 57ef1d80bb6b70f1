#include "core/block/build_problem.h"

#include <algorithm>
#include <cassert>
#include <cstdlib>
#include <set>
#include <tuple>

#include "core/block/carried_targets.h"
#include "core/block/outline.h"
#include "core/block/set_rules.h"
#include "core/catalogue/loads.h"
#include "core/clock/clock.h"
#include "core/plan/availability.h"
#include "core/plan/build_problem.h"
#include "core/plan/credits.h"
#include "core/plan/plan_session.h"

namespace lanework::block {
namespace {

using catalogue::Catalogue;
using session::Evening;

constexpr int kDaysPerWeek = 7;
constexpr int kMinutesBetweenHard = 60 * kHoursBetweenHard;

int steps_of(int seconds) { return (seconds + kStepSeconds / 2) / kStepSeconds; }

bool same_place(const session::Strip& a, const session::Strip& b) {
  return a.lane_length == b.lane_length && a.cone_spacing == b.cone_spacing && a.lanes == b.lanes &&
         a.lane_gap == b.lane_gap && a.area_width == b.area_width && a.area_length == b.area_length &&
         a.surface == b.surface && a.wall == b.wall && a.soft_ground == b.soft_ground && a.line == b.line;
}

bool same_restrictions(const Evening& a, const Evening& b) {
  return std::equal(a.restrictions.begin(), a.restrictions.end(), b.restrictions.begin(), b.restrictions.end(),
                    [](const people::Restriction& x, const people::Restriction& y) {
                      return x.areas == y.areas && x.kinds == y.kinds && x.allowed_grade == y.allowed_grade &&
                             x.barred == y.barred;
                    });
}

bool same_kind(const Evening& a, const Evening& b) {
  return a.slot == b.slot && a.turnout == b.turnout && a.age == b.age && a.days_to_match == b.days_to_match &&
         a.kit.cones == b.kit.cones && a.kit.balls == b.kit.balls && a.kit.mats == b.kit.mats && a.bans == b.bans &&
         same_place(a.strip, b.strip) && same_restrictions(a, b);
}

class ProblemBuilder {
 public:
  ProblemBuilder(const Outline& outline, plan::KernelWorkspace& workspace)
      : outline_(outline), catalogue_(*outline.catalogue), workspace_(workspace) {}

  Built build() {
    set_weeks();
    set_families();
    const std::size_t past = outline_.rolling ? outline_.rolling->past.size() : 0;
    if (past > 0) take_past();
    for (std::size_t e = past; e < outline_.evenings.size(); ++e) {
      const Evening& evening = outline_.evenings[e];
      if (is_match_day(evening)) {
        fix(e);
      } else {
        add_session(e);
      }
    }
    join_drills();
    set_close();
    set_limits();
    if (outline_.rolling) roll_on();
    return std::move(built_);
  }

 private:
  // One kind as the session planner sees it, before the drills of all kinds are joined.
  // How well the drills of a spell are known: as the squad's history says in its first week, fully after that. After a
  // first week that did not come about, those that nobody has done yet are still new.
  enum class Telling { kFirstWeek, kStillNew, kKnown };
  struct KindDraft {
    Evening evening;
    Telling telling;
    std::vector<int> rungs;  // by drill of the catalogue, -1: as the routine has it, or the easiest
    plan::Problem session;
    int budget;
  };

  const Outline& outline_;
  const Catalogue& catalogue_;
  plan::KernelWorkspace& workspace_;
  Built built_;
  std::vector<KindDraft> drafts_;
  std::set<int> done_;       // drills of the catalogue that past sessions have done
  std::set<int> still_new_;  // that the running spell had planned before now, and has not done

  [[nodiscard]] int week_of(const Evening& evening) const {
    return days_between(outline_.monday, evening.date) / kDaysPerWeek;
  }

  void set_weeks() {
    const std::vector<int> spells = spell_of_week(outline_.weeks);
    const int age = outline_.evenings.empty() ? 0 : outline_.evenings.front().age;
    const catalogue::Ceilings& band = catalogue_.ceilings_for(age);
    for (const int spell : spells) {
      Week week;
      week.spell = spell;
      week.ceiling = {static_cast<int>(band.contacts_week * 1000), static_cast<int>(band.eccentric_week * 1000),
                      static_cast<int>(band.hard_running_week * 1000)};
      week.fixed.assign(catalogue_.families.size(), 0);
      for (const catalogue::FamilyRow& row : catalogue_.families)
        week.target.push_back(static_cast<int>(4 * row.week_work.count / row.session_work.count));
      built_.problem.weeks.push_back(std::move(week));
    }
    built_.problem.spells = spells.empty() ? 0 : spells.back() + 1;
  }

  void set_families() {
    for (const catalogue::FamilyRow& row : catalogue_.families)
      built_.problem.families.push_back({row.family, row.weight, row.required, 0, {}});
  }

  // A match day's warm-up is planned on its own, from its own routine; what it gives and uses counts for the week.
  void fix(std::size_t e) {
    const Evening& evening = outline_.evenings[e];
    const plan::Plan plan = plan::plan_session(catalogue_, *outline_.match_day_routine, evening, workspace_);
    Week& week = built_.problem.weeks[static_cast<std::size_t>(week_of(evening))];
    for (const session::Item& item : plan.session.items) {
      const catalogue::Drill& drill = catalogue_.drills[static_cast<std::size_t>(item.drill)];
      const catalogue::DoseStep& step = drill.dose.steps[static_cast<std::size_t>(item.dose)];
      const catalogue::LoadSum load = catalogue::load_of(drill, drill.rungs[static_cast<std::size_t>(item.rung)], step,
                                                         evening.strip.lane_length, catalogue_.limits);
      week.fixed[static_cast<std::size_t>(drill.family)] +=
          plan::credits_of(drill, step, catalogue_.family(drill.family), evening.age);
      week.ceiling[0] = std::max(0, week.ceiling[0] - static_cast<int>(load.contacts));
      week.ceiling[1] = std::max(0, week.ceiling[1] - static_cast<int>(load.eccentric));
      week.ceiling[2] = std::max(0, week.ceiling[2] - static_cast<int>(load.hard_running));
    }
    built_.fixed.push_back({e, plan.session});
  }

  [[nodiscard]] Telling telling_in(int week) const {
    if (starts_spell(week)) return Telling::kFirstWeek;
    const Rolling* rolling = outline_.rolling ? &*outline_.rolling : nullptr;
    if (rolling == nullptr || rolling->past.size() == outline_.evenings.size() || still_new_.empty())
      return Telling::kKnown;
    return week == week_of(outline_.evenings[rolling->past.size()]) ? Telling::kStillNew : Telling::kKnown;
  }

  // What past sessions gave and used counts for their weeks.
  void take_past() {
    std::vector<Week>& weeks = built_.problem.weeks;
    for (const PastSession& past : outline_.rolling->past) {
      const Evening& evening = outline_.evenings[past.evening];
      Week& week = weeks[static_cast<std::size_t>(week_of(evening))];
      for (std::size_t f = 0; f < past.given.size(); ++f) week.fixed[f] += past.given[f];
      for (std::size_t l = 0; l < kLoads; ++l) week.ceiling[l] = std::max(0, week.ceiling[l] - past.used[l]);
      for (const PastItem& item : past.items) {
        const bool first = item.done && done_.insert(item.planned.drill).second;
        if (first && never_done(item.planned.drill) && !is_match_day(evening)) ++week.begun;
      }
    }
    for (Week& week : weeks) week.begun = std::min(week.begun, most_new_in_week(catalogue_.limits));
    find_still_new();
    carry_targets();
  }

  void find_still_new() {
    const std::vector<PastSession>& past = outline_.rolling->past;
    const auto spell_of = [&](std::size_t evening) {
      return built_.problem.weeks[static_cast<std::size_t>(week_of(outline_.evenings[evening]))].spell;
    };
    if (past.size() == outline_.evenings.size()) return;
    std::set<int> done;
    for (const bool wanted : {true, false}) {
      for (const PastSession& session : past) {
        if (spell_of(session.evening) != spell_of(past.size()) || is_match_day(outline_.evenings[session.evening]))
          continue;
        for (const PastItem& item : session.items) {
          if (item.done != wanted) continue;
          if (wanted) {
            done.insert(item.planned.drill);
          } else if (done.count(item.planned.drill) == 0) {
            still_new_.insert(item.planned.drill);
          }
        }
      }
    }
  }

  void carry_targets() {
    std::vector<Week>& weeks = built_.problem.weeks;
    std::vector<WeekAccount> accounts(weeks.size());
    for (WeekAccount& account : accounts) account.promised.assign(weeks.front().target.size(), 0);
    for (std::size_t w = 0; w < weeks.size(); ++w) accounts[w].given = weeks[w].fixed;
    for (std::size_t e = 0; e < outline_.evenings.size(); ++e) {
      WeekAccount& account = accounts[static_cast<std::size_t>(week_of(outline_.evenings[e]))];
      account.has_session = account.has_session || !is_match_day(outline_.evenings[e]);
      account.over = e < outline_.rolling->past.size();  // by date: the last one of the week decides
    }
    for (const PastSession& past : outline_.rolling->past) {
      WeekAccount& account = accounts[static_cast<std::size_t>(week_of(outline_.evenings[past.evening]))];
      for (std::size_t f = 0; f < past.promised.size(); ++f) account.promised[f] += past.promised[f];
    }
    const std::vector<std::vector<int>> targets = carried_targets(weeks.front().target, accounts);
    for (std::size_t w = 0; w < weeks.size(); ++w) weeks[w].target = targets[w];
  }

  [[nodiscard]] bool in_routine(int drill) const {
    const auto same = [&](const catalogue::RoutineLine& line) { return line.drill == drill; };
    return std::any_of(outline_.routine->lines.begin(), outline_.routine->lines.end(), same);
  }

  // By this squad, before the block began.
  [[nodiscard]] bool never_done(int drill) const {
    const auto& exposures = outline_.evenings.front().exposures;
    const auto known = exposures.find(catalogue_.drills[static_cast<std::size_t>(drill)].id);
    return !in_routine(drill) && (known == exposures.end() || known->second.times == 0);
  }

  static bool is_match_day(const Evening& evening) { return evening.days_to_match && *evening.days_to_match == 0; }

  // Spells that have begun keep their sets; a hard session behind the coming one makes it a light one.
  void roll_on() {
    Problem& p = built_.problem;
    const std::vector<PastSession>& past = outline_.rolling->past;
    const int days = std::max(0, days_between(outline_.monday, outline_.rolling->today));
    const auto week = std::min(static_cast<std::size_t>(days / kDaysPerWeek), p.weeks.size() - 1);
    p.begun = p.weeks[week].spell + 1;
    for (std::size_t s = 0; s < p.sessions.size(); ++s) {
      Session& session = p.sessions[s];
      const Evening& evening = outline_.evenings[built_.evening_of[s]];
      for (const PastSession& before : past) {
        const Evening& then = outline_.evenings[before.evening];
        if (is_match_day(then) || minutes_between(then, evening) >= kMinutesBetweenHard) continue;
        if (before.used[0] <= session.hard[0] && before.used[1] <= session.hard[1]) continue;
        for (std::size_t l = 0; l < 2; ++l) session.ceiling[l] = std::min(session.ceiling[l], session.hard[l]);
      }
    }
  }

  static int minutes_between(const Evening& first, const Evening& second) {
    return days_between(first.date, second.date) * 24 * 60 + second.start.minutes - first.start.minutes;
  }

  [[nodiscard]] bool starts_spell(int week) const {
    const std::vector<Week>& weeks = built_.problem.weeks;
    const auto w = static_cast<std::size_t>(week);
    return week == 0 || weeks[w].spell != weeks[w - 1].spell;
  }

  [[nodiscard]] std::vector<int> rungs_of(int week) const {
    std::vector<int> out(catalogue_.drills.size(), -1);
    for (const auto& [id, by_week] : outline_.rungs) {
      const catalogue::Drill* drill = catalogue_.find(id);
      const auto w = static_cast<std::size_t>(week);
      if (drill == nullptr || w >= by_week.size() || by_week[w].empty()) continue;
      out[static_cast<std::size_t>(drill - catalogue_.drills.data())] = catalogue::rung_index(*drill, by_week[w]);
    }
    return out;
  }

  void add_session(std::size_t e) {
    const Evening& evening = outline_.evenings[e];
    const int week = week_of(evening);
    const std::size_t kind = kind_for(evening, telling_in(week), rungs_of(week));
    const KindDraft& draft = drafts_[kind];
    Session session;
    session.day = days_between(outline_.monday, evening.date);
    session.week = week;
    session.spell = built_.problem.weeks[static_cast<std::size_t>(week)].spell;
    session.kind = static_cast<int>(kind);
    session.budget = std::max(0, draft.budget / kStepSeconds);
    const catalogue::Ceilings& band = catalogue_.ceilings_for(evening.age);
    for (std::size_t l = 0; l < kLoads; ++l) session.ceiling[l] = draft.session.ceiling[l];
    session.hard = {static_cast<int>(band.contacts_session * 10 * kHardPercent),
                    static_cast<int>(band.eccentric_session * 10 * kHardPercent), session.ceiling[2]};
    built_.problem.sessions.push_back(session);
    built_.evening_of.push_back(e);
  }

  std::size_t kind_for(const Evening& evening, Telling telling, const std::vector<int>& rungs) {
    for (std::size_t k = 0; k < drafts_.size(); ++k) {
      const KindDraft& draft = drafts_[k];
      if (draft.telling == telling && draft.rungs == rungs && same_kind(draft.evening, evening)) return k;
    }
    drafts_.push_back({evening, telling, rungs, {}, 0});
    KindDraft& draft = drafts_.back();
    Evening& open = draft.evening;
    open.free_composition = true;
    if (telling != Telling::kFirstWeek) know_everything(open, telling);
    const Seconds margin = routine_margin(evening);
    draft.session = plan::build_problem(catalogue_, *outline_.routine, open, evening.slot - margin);
    draft.budget = draft.session.budget;
    return drafts_.size() - 1;
  }

  // After its first week in a spell a drill has been told often enough; before that as often as it was.
  void know_everything(Evening& evening, Telling telling) const {
    for (const catalogue::Drill& drill : catalogue_.drills) {
      if (telling == Telling::kStillNew && still_new_.count(static_cast<int>(&drill - catalogue_.drills.data())) > 0)
        continue;
      session::Exposure& exposure = evening.exposures[drill.id];
      exposure.times = std::max(exposure.times, kTimesTold);
    }
  }

  [[nodiscard]] Seconds routine_margin(const Evening& evening) const {
    session::Session routine;
    for (const catalogue::RoutineLine& line : outline_.routine->lines) {
      const catalogue::Drill& drill = catalogue_.drills[static_cast<std::size_t>(line.drill)];
      if (!plan::barred_because(drill, line.rung, evening))
        routine.items.push_back({line.drill, line.rung, line.dose, {}, {}, {}, {}});
    }
    return clock::moment_margin(clock::session_lines(routine, catalogue_, evening));
  }

  struct Place {
    int group;
    bool added;  // not of the routine
    int line;
    std::string id;
    int drill;
    catalogue::Formation formation;
    bool operator<(const Place& other) const {
      return std::tie(group, added, line, id) < std::tie(other.group, other.added, other.line, other.id);
    }
  };

  [[nodiscard]] bool of_a_standing_set(int drill) const {
    if (!outline_.rolling) return false;
    const auto& sets = outline_.rolling->standing.sets;
    return std::any_of(sets.begin(), sets.end(), [&](const std::vector<int>& set) {
      return std::find(set.begin(), set.end(), drill) != set.end();
    });
  }

  // A drill that no evening is open to any more stays of the sets it was of.
  void add_standing_drills(std::vector<Place>& places) const {
    for (std::size_t d = 0; d < catalogue_.drills.size(); ++d) {
      const catalogue::Drill& drill = catalogue_.drills[d];
      const int index = static_cast<int>(d);
      const auto same = [&](const Place& place) { return place.drill == index; };
      if (!of_a_standing_set(index) || std::any_of(places.begin(), places.end(), same)) continue;
      const std::vector<Group>& groups = built_.problem.groups;
      const auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& one) {
        return one.family == static_cast<int>(drill.family) && one.phase == drill.phase;
      });
      places.push_back(
          {static_cast<int>(group - groups.begin()), !in_routine(index), -1, drill.id, index, drill.formation});
    }
  }

  // The drills of all kinds in one canonical order.
  void join_drills() {
    Problem& p = built_.problem;
    if (drafts_.empty()) return;
    for (const plan::Group& group : drafts_.front().session.groups) {
      const int family = static_cast<int>(group.family);
      p.families[static_cast<std::size_t>(family)].groups.push_back(static_cast<int>(p.groups.size()));
      p.groups.push_back({family, group.phase});
    }
    std::vector<Place> places;
    for (const KindDraft& draft : drafts_) {
      for (const plan::ProblemDrill& drill : draft.session.drills) {
        const auto same = [&](const Place& place) { return place.drill == drill.drill; };
        if (std::any_of(places.begin(), places.end(), same)) continue;
        // What no evening is open to, since every dose breaks a ceiling, cannot come in.
        if (drill.routine_line < 0 && options_of(drill, draft).empty() && !of_a_standing_set(drill.drill)) continue;
        places.push_back({drill.group, drill.routine_line < 0, drill.routine_line,
                          catalogue_.drills[static_cast<std::size_t>(drill.drill)].id, drill.drill, drill.formation});
      }
    }
    add_standing_drills(places);
    std::sort(places.begin(), places.end());
    const session::ChangeWeights& weights = outline_.evenings.front().weights;
    for (const Place& place : places) {
      Drill drill;
      drill.drill = place.drill;
      drill.group = place.group;
      drill.formation = place.formation;
      drill.current = !place.added;
      drill.unknown = never_done(place.drill) && done_.count(place.drill) == 0;
      drill.left_out = kLeftOutTimesWeight * weights.left_out;
      for (const session::Pin& pin : outline_.evenings.front().pins) {
        if (pin.drill == place.id) drill.left_out = kPinned;
      }
      p.drills.push_back(drill);
    }
    for (const KindDraft& draft : drafts_) p.kinds.push_back(kind_of(draft));
  }

  [[nodiscard]] Kind kind_of(const KindDraft& draft) const {
    const Problem& p = built_.problem;
    Kind kind;
    for (std::size_t from = 0; from < kind.change.size(); ++from) {
      for (std::size_t to = 0; to < kind.change.size(); ++to)
        kind.change[from][to] = steps_of(draft.session.change[from][to]);
    }
    kind.options.resize(p.drills.size());
    for (std::size_t d = 0; d < p.drills.size(); ++d) {
      for (const plan::ProblemDrill& drill : draft.session.drills) {
        if (drill.drill == p.drills[d].drill) kind.options[d] = options_of(drill, draft);
      }
    }
    return kind;
  }

  // The doses on the rung of the week: the pinned one, the hardest open up to the confirmed one or the routine's, else
  // the easiest that is open.
  [[nodiscard]] std::vector<Option> options_of(const plan::ProblemDrill& drill, const KindDraft& draft) const {
    const bool in_routine = drill.routine_line >= 0;
    int wanted = draft.rungs[static_cast<std::size_t>(drill.drill)];
    if (wanted < 0) {
      wanted = in_routine              ? outline_.routine->lines[static_cast<std::size_t>(drill.routine_line)].rung
               : drill.options.empty() ? 0
                                       : drill.options.front().rung;
    }
    if (const int pinned = pinned_rung(drill.drill, draft.evening); pinned >= 0) wanted = pinned;
    int rung = -1;
    for (const plan::Option& option : drill.options) {
      if (option.rung <= wanted) rung = std::max(rung, option.rung);
    }
    std::vector<Option> out;
    for (const plan::Option& option : drill.options) {
      if (option.rung != rung || breaks_alone(option, draft.session.ceiling)) continue;
      Option made;
      made.rung = option.rung;
      made.dose = option.dose;
      made.steps = std::max(1, steps_of(option.seconds));
      made.credits = option.credits;
      for (std::size_t l = 0; l < kLoads; ++l) made.loads[l] = option.loads[l];
      if (in_routine) {
        const int own = outline_.routine->lines[static_cast<std::size_t>(drill.routine_line)].dose;
        made.departure = std::abs(own - option.dose) * Points{draft.evening.weights.dose_step};
      }
      out.push_back(made);
    }
    if (in_routine) drop_small_doses(drill, out);
    return out;
  }

  // A drill of the routine is done in earnest: less than half of its own dose only where no more is open, then the most
  // that is.
  void drop_small_doses(const plan::ProblemDrill& drill, std::vector<Option>& options) const {
    const std::vector<catalogue::DoseStep>& steps = catalogue_.drills[static_cast<std::size_t>(drill.drill)].dose.steps;
    const auto work = [&](int dose) {
      const catalogue::DoseStep& step = steps[static_cast<std::size_t>(dose)];
      return step.sets * step.amount;
    };
    const int own = work(outline_.routine->lines[static_cast<std::size_t>(drill.routine_line)].dose);
    int most = 0;
    for (const Option& option : options) most = std::max(most, work(option.dose));
    std::erase_if(options, [&](const Option& option) {
      return 100 * work(option.dose) < std::min(kKeptDosePercent * own, 100 * most);
    });
  }

  [[nodiscard]] int pinned_rung(int drill, const Evening& evening) const {
    const catalogue::Drill& known = catalogue_.drills[static_cast<std::size_t>(drill)];
    for (const session::Pin& pin : evening.pins) {
      if (pin.drill == known.id && !pin.rung.empty()) return catalogue::rung_index(known, pin.rung);
    }
    return -1;
  }

  static bool breaks_alone(const plan::Option& option, const std::array<int, plan::kLoads>& ceiling) {
    for (std::size_t l = 0; l < kLoads; ++l) {
      if (option.loads[l] > ceiling[l]) return true;
    }
    return false;
  }

  void set_close() {
    const std::vector<Session>& sessions = built_.problem.sessions;
    for (std::size_t a = 0; a < sessions.size(); ++a) {
      for (std::size_t b = a + 1; b < sessions.size(); ++b) {
        const Evening& first = outline_.evenings[built_.evening_of[a]];
        const Evening& second = outline_.evenings[built_.evening_of[b]];
        if (minutes_between(first, second) < kMinutesBetweenHard)
          built_.problem.close.emplace_back(static_cast<int>(a), static_cast<int>(b));
      }
    }
  }

  void set_limits() {
    Problem& p = built_.problem;
    if (outline_.evenings.empty()) return;
    const session::ChangeWeights& weights = outline_.evenings.front().weights;
    p.most_new_in_session = catalogue_.limits.most_new_drills;
    p.most_new_in_week = most_new_in_week(catalogue_.limits);
    p.swap = kSwapTimesWeight * weights.new_drill;
    p.uncovered = kUncovered;
    keep_set_rules(outline_, built_.evening_of, p);
  }
};

}  // namespace

std::vector<int> spell_of_week(int weeks) {
  // Long ones first where short ones do not come out even, unless that would leave one week alone.
  const bool even = weeks % kSpellWeeks == 0 || weeks == kLongSpellWeeks + 1;
  const int length = even ? kSpellWeeks : kLongSpellWeeks;
  std::vector<int> out;
  for (int w = 0; w < weeks; ++w) out.push_back(w / length);
  return out;
}

int most_new_in_week(const catalogue::Limits& limits) { return limits.most_new_drills + kMoreNewInWeek; }

Built build_problem(const Outline& outline, plan::KernelWorkspace& workspace) {
  return ProblemBuilder(outline, workspace).build();
}

}  // namespace lanework::block
