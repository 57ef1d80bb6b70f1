#include <algorithm>
#include <cstdlib>

#include "core/check/barred.h"
#include "core/check/judge.h"
#include "core/check/offered.h"
#include "core/check/order.h"
#include "core/check/refute.h"
#include "core/check/squad_evenings.h"
#include "core/check/squad_ledger.h"
#include "core/check/timing.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kStep = 5;  // seconds
// Of the age band's ceiling: a session that uses more is hard.
constexpr std::int64_t kHardPercent = 60;

std::int64_t steps_of(std::int64_t seconds) { return (seconds + kStep / 2) / kStep; }

std::string words_of_step(const Step& step) { return std::to_string(step.sets) + " x " + std::to_string(step.amount); }

std::vector<NamedItem> names_of(const StatedSession& session) {
  std::vector<NamedItem> out;
  for (const StatedItem& item : session.items) out.push_back(item.named);
  return out;
}

class SessionJudge {
 public:
  SessionJudge(const Matter& matter, EveningLedger evening, SquadLedger& ledger, SquadFaults& faults)
      : matter_(matter),
        evening_(std::move(evening)),
        ledger_(ledger),
        faults_(faults),
        where_(words_of(evening_.wish->date, evening_.wish->start_minutes)) {}

  void judge_planned(std::int64_t budget) {
    begin();
    judge_untold();
    for (const auto& [id, drill] : matter_.drills) {
      if (!open_doses(drill, matter_).empty()) evening_.open.insert(id);
    }
    for (const Pin& pin : matter_.tonight.pins) evening_.pinned.insert(pin.drill);
    take_over("", [&](std::vector<Violation>& out) { judge_order(picks_, matter_, out); });
    for (const Pick& pick : picks_) judge_pick(pick);
    judge_pins();
    judge_clock(budget);
    judge_ceilings();
    judge_new();
    end();
  }

  void judge_match_day() {
    begin();
    judge_untold();
    const StatedSession& stated = *evening_.stated;
    if (stated.budget_steps || stated.planned_steps) {
      faults_.add(where_, "match-day-steps", "budget_steps or planned_steps", "neither on a match day");
    }
    if (picks_.empty() && stated.items.empty()) {
      const Selection session = witness(matter_);
      if (!session.empty()) {
        std::string names;
        for (const Pick& pick : session) names += (names.empty() ? "" : ", ") + pick.drill->id;
        faults_.add(where_, "match-day-empty", "no drill", "a session, such as: " + names);
      }
    } else {
      take_over("", [&](std::vector<Violation>& out) { judge(picks_, matter_, true, out); });
    }
    end();
  }

 private:
  const Matter& matter_;
  EveningLedger evening_;
  SquadLedger& ledger_;
  SquadFaults& faults_;
  std::string where_;
  Selection picks_;

  // Violations of the rules on single sessions, told for the block.
  template <class Judge>
  void take_over(const std::string& after, Judge judge_into) {
    std::vector<Violation> found;
    judge_into(found);
    for (Violation& violation : found) {
      faults_.add(where_ + ", " + violation.where + after, violation.rule.c_str(), std::move(violation.found),
                  std::move(violation.allowed));
    }
  }

  void begin() {
    const std::vector<NamedItem> names = names_of(*evening_.stated);
    take_over("", [&](std::vector<Violation>& out) { picks_ = existing(names, matter_, out); });
    if (picks_.size() != names.size()) ledger_.complete = false;
    for (std::size_t i = 0; i < picks_.size(); ++i) {
      for (std::size_t j = 0; j < i; ++j) {
        if (picks_[j].drill != picks_[i].drill) continue;
        faults_.add(where_ + ", " + picks_[i].where, "drill-twice", "also " + picks_[j].where, "each drill once");
        break;
      }
    }
    evening_.age = matter_.tonight.age;
    evening_.band = band_of(matter_);
    evening_.loads = loads_of(picks_, matter_);
    const std::int64_t contacts = evening_.band.jump_cap * matter_.limits.warm_up_share_percent / 100;
    evening_.hard = evening_.loads.contacts > contacts * 10 * kHardPercent ||
                    evening_.loads.eccentric > evening_.band.eccentric * 10 * kHardPercent;
    for (const Pick& pick : picks_) {
      evening_.credits[pick.drill->family] += credits_of(*pick.drill, step_of(pick), matter_);
      evening_.work_ms[pick.drill->family] += work_ms(*pick.drill, step_of(pick));
      evening_.done.push_back(pick.drill->id);
    }
  }

  // What is to come has not happened.
  void judge_untold() {
    const StatedSession& stated = *evening_.stated;
    const bool done = std::any_of(stated.items.begin(), stated.items.end(),
                                  [](const StatedItem& item) { return item.done.has_value(); });
    if (stated.happened.empty() && stated.did_it.empty() && !stated.minutes_had && !done) return;
    faults_.add(where_, "past-told", "what happened", "nothing: it is to come");
  }

  void end() { ledger_.evenings.push_back(std::move(evening_)); }

  void judge_pick(const Pick& pick) {
    const std::vector<Bar> bars = bars_of(*pick.drill, rung_of(pick), matter_);
    for (const Bar& bar : bars) {
      faults_.add(where_ + ", " + pick.where, bar.rule.c_str(), bar.found, bar.allowed);
    }
    if (first_time(pick.drill->id) && pick.drill->eccentric_thousandths > 0 && eccentric_work_is_cut(matter_)) {
      faults_.add(where_ + ", " + pick.where, "new-eccentric",
                  "eccentric work never done before, " + std::to_string(*matter_.tonight.days_to_match) +
                      " days before a match",
                  "none that is new");
    }
    const OpenDoses open = open_doses(*pick.drill, matter_);
    if (bars.empty() && open.rung >= 0 && open.rung != pick.rung) {
      faults_.add(where_ + ", " + pick.where, "rung-of-week", rung_of(pick).key,
                  pick.drill->rungs[static_cast<std::size_t>(open.rung)].key);
    }
    if (bars.empty() && open.rung < 0) {
      faults_.add(where_ + ", " + pick.where, "not-open", rung_of(pick).key, "a drill that is open that evening");
    }
    const int line = routine_position(matter_, pick.drill->id);
    if (bars.empty() && open.rung == pick.rung && line >= 0 && !open.steps.empty()) {
      const Step& least = pick.drill->steps[static_cast<std::size_t>(open.steps.front())];
      const Step& own = step_of(pick);
      if (own.sets * own.amount < least.sets * least.amount) {
        faults_.add(where_ + ", " + pick.where, "dose-small", words_of_step(own),
                    "at least " + words_of_step(least) + ", half of the routine's dose");
      }
    }
    if (line >= 0) {
      const int own = step_position(*pick.drill, matter_.routine[static_cast<std::size_t>(line)].step);
      evening_.departure += std::abs(own - pick.step) * matter_.tonight.weights.dose_step;
    }
  }

  void judge_pins() {
    for (const Pin& pin : matter_.tonight.pins) {
      if (evening_.open.count(pin.drill) == 0) continue;
      const Pick* pick = find_pick(picks_, pin.drill);
      if (pick == nullptr || keeps(*pick, pin)) continue;  // what is left out is told, and costs (judge_numbers)
      faults_.add(where_ + ", " + pick->where, "pin", rung_of(*pick).key + ", " + words_of_step(step_of(*pick)),
                  "as pinned");
    }
  }

  void judge_clock(std::int64_t budget) {
    const StatedSession& stated = *evening_.stated;
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < picks_.size(); ++i) {
      const DrillTiming time = time_drill(picks_[i], matter_);
      const std::int64_t steps = std::max<std::int64_t>(1, steps_of(up(time.telling_ms + time.doing_ms)));
      if (i > 0) {
        sum += steps_of(up(change_ms(picks_[i - 1].drill->formation, picks_[i].drill->formation, matter_)));
      }
      sum += steps;
      if (picks_.size() == stated.items.size()) {
        expect(picks_[i].where, "steps", stated.items[i].steps, steps);
      }
    }
    const std::int64_t budget_steps = std::max<std::int64_t>(0, budget / kStep);
    expect("", "budget-steps", stated.budget_steps, budget_steps);
    if (picks_.size() == stated.items.size()) expect("", "planned-steps", stated.planned_steps, sum);
    if (sum > budget_steps) {
      faults_.add_row(where_, "clock", std::to_string(sum) + " steps of 5 s",
                      "at most " + std::to_string(budget_steps));
    }
  }

  static std::int64_t up(std::int64_t ms) { return (ms + 999) / 1000; }

  void expect(const std::string& what, const char* rule, std::optional<std::int64_t> stated, std::int64_t own) {
    if (stated && *stated == own) return;
    faults_.add(what.empty() ? where_ : where_ + ", " + what, rule, stated ? std::to_string(*stated) : "nothing",
                std::to_string(own));
  }

  void judge_ceilings() {
    const LoadSums most = ceilings_of(matter_);
    const LoadSums& sum = evening_.loads;
    judge_ceiling("ceiling-contacts", sum.contacts, most.contacts);
    judge_ceiling("ceiling-eccentric", sum.eccentric, most.eccentric);
    judge_ceiling("ceiling-hard-running", sum.hard_running, most.hard_running);
  }

  void judge_ceiling(const char* rule, std::int64_t sum, std::int64_t most) {
    if (sum > most) faults_.add_row(where_, rule, in_units(sum), "at most " + in_units(most));
  }

  [[nodiscard]] bool first_time(const std::string& drill) const { return ledger_.first_time(matter_, drill); }

  // A row of days to the match may forbid all that is new.
  void judge_new() {
    std::int64_t fresh = 0;
    for (const Pick& pick : picks_) fresh += first_time(pick.drill->id) ? 1 : 0;
    const std::int64_t most = ceilings_of(matter_).new_drills;
    if (fresh > most) {
      faults_.add_row(where_, "new-in-session", std::to_string(fresh) + " drills never done before",
                      "at most " + std::to_string(most));
    }
    evening_.fresh = fresh;
  }
};

}  // namespace

std::string in_units(std::int64_t thousandths) {
  std::string out = std::to_string(thousandths / 1000);
  if (thousandths % 1000 == 0) return out;
  std::string rest = std::to_string(1000 + thousandths % 1000).substr(1);
  rest.erase(rest.find_last_not_of('0') + 1);
  return out + "." + rest;
}

std::int64_t budget_seconds(const Matter& matter) {
  Selection routine;
  for (const RoutineLine& line : matter.routine) {
    const Drill& drill = matter.drills.at(line.drill);
    const Pick pick{&drill, rung_position(drill, line.rung), step_position(drill, line.step), ""};
    if (bars_of(drill, rung_of(pick), matter).empty()) routine.push_back(pick);
  }
  return matter.tonight.slot_seconds - time_session(routine, matter).margin_seconds -
         (gathering_ms(matter) + 999) / 1000;
}

void judge_planned_session(const Matter& matter, std::int64_t budget_seconds, EveningLedger evening,
                           SquadLedger& ledger, SquadFaults& faults) {
  SessionJudge(matter, std::move(evening), ledger, faults).judge_planned(budget_seconds);
}

void judge_match_day(const Matter& matter, EveningLedger evening, SquadLedger& ledger, SquadFaults& faults) {
  SessionJudge(matter, std::move(evening), ledger, faults).judge_match_day();
}

}  // namespace lanework::check
