#include "core/check/judge.h"

#include <algorithm>

#include "core/check/barred.h"
#include "core/check/dose_words.h"
#include "core/check/levels.h"
#include "core/check/offered.h"
#include "core/check/order.h"
#include "core/check/timing.h"

namespace lanework::check {
namespace {

std::string step_words(const Step& step) { return std::to_string(step.sets) + " x " + std::to_string(step.amount); }

std::string steps_of(const Drill& drill) {
  std::string list;
  for (const Step& step : drill.steps) list += (list.empty() ? "" : ", ") + step_words(step);
  return list;
}

std::string rungs_of(const Drill& drill) {
  std::string list;
  for (const Rung& rung : drill.rungs) list += (list.empty() ? "" : ", ") + rung.key;
  return list;
}

void judge_items(const Selection& selection, const Matter& matter, bool only_offered, std::vector<Violation>& out) {
  for (std::size_t i = 0; i < selection.size(); ++i) {
    const Pick& pick = selection[i];
    for (const Bar& bar : bars_of(*pick.drill, rung_of(pick), matter)) {
      out.push_back({bar.rule, pick.where, bar.found, bar.allowed});
    }
    if (only_offered) {
      std::string limit = not_offered(pick, matter);
      const std::string found = rung_of(pick).words + ", " + dose_words(*pick.drill, step_of(pick));
      if (!limit.empty()) out.push_back({"not-offered", pick.where, found, std::move(limit)});
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (selection[j].drill != pick.drill) continue;
      out.push_back({"drill-twice", pick.where, "also " + selection[j].where, "each drill once"});
      break;
    }
  }
}

void judge_pins(const Selection& selection, const Matter& matter, std::vector<Violation>& out) {
  for (const Pin& pin : matter.tonight.pins) {
    std::string wanted = pin.drill;
    if (!pin.rung.empty()) wanted += ", " + pin.rung;
    if (pin.step) wanted += ", " + step_words(*pin.step);
    const Pick* pick = find_pick(selection, pin.drill);
    if (pick == nullptr) {
      out.push_back({"pin", "pin " + pin.drill, "left out", wanted});
    } else if (!keeps(*pick, pin)) {
      out.push_back({"pin", pick->where, rung_of(*pick).key + ", " + step_words(step_of(*pick)), wanted});
    }
  }
}

void judge_ceiling(const char* rule, std::int64_t sum, std::int64_t ceiling, std::int64_t scale,
                   std::vector<Violation>& out) {
  if (sum <= ceiling) return;
  const auto in_units = [&](std::int64_t value) {
    std::string words = std::to_string(value / scale);
    if (value % scale == 0) return words;
    const std::string rest = std::to_string(value % scale);
    return words + "." + std::string(3 - rest.size(), '0') + rest;
  };
  out.push_back({rule, "the session", in_units(sum), in_units(ceiling) + " or fewer"});
}

void judge_ceilings(const Selection& selection, const Matter& matter, std::vector<Violation>& out) {
  const LoadSums sum = loads_of(selection, matter);
  const LoadSums most = ceilings_of(matter);
  judge_ceiling("ceiling-contacts", sum.contacts, most.contacts, 1000, out);
  judge_ceiling("ceiling-eccentric", sum.eccentric, most.eccentric, 1000, out);
  judge_ceiling("ceiling-hard-running", sum.hard_running, most.hard_running, 1000, out);
  judge_ceiling("ceiling-new-drills", sum.new_drills, most.new_drills, 1, out);
}

void judge_clock(const Selection& selection, const Matter& matter, std::vector<Violation>& out) {
  const SessionTiming timing = time_session(selection, matter);
  const std::int64_t end = timing.planned_seconds + timing.margin_seconds;
  if (end <= matter.tonight.slot_seconds) return;
  out.push_back({"slot", "the session",
                 std::to_string(timing.planned_seconds) + " s planned and " + std::to_string(timing.margin_seconds) +
                     " s of margin",
                 std::to_string(matter.tonight.slot_seconds) + " s in all"});
}

}  // namespace

Selection existing(const std::vector<NamedItem>& items, const Matter& matter, std::vector<Violation>& violations) {
  Selection out;
  for (const NamedItem& item : items) {
    const auto found = matter.drills.find(item.drill);
    if (found == matter.drills.end()) {
      violations.push_back({"drill-unknown", item.where, item.drill, "a drill of the catalogue"});
      continue;
    }
    const Drill& drill = found->second;
    const int rung = rung_position(drill, item.rung);
    const int step = step_position(drill, item.step);
    if (rung < 0) violations.push_back({"rung-unknown", item.where, item.rung, "one of " + rungs_of(drill)});
    if (step < 0) {
      violations.push_back({"dose-unknown", item.where, step_words(item.step), "one of " + steps_of(drill)});
    }
    if (rung >= 0 && step >= 0) out.push_back({&drill, rung, step, item.where});
  }
  return out;
}

void judge(const Selection& selection, const Matter& matter, bool only_offered, std::vector<Violation>& violations) {
  if (!matter.tonight.no_session.empty()) {
    violations.push_back({"no-session", "the session", "a session", "none tonight: " + matter.tonight.no_session});
  }
  if (selection.empty()) violations.push_back({"empty", "the session", "no drill", "at least one"});
  judge_items(selection, matter, only_offered, violations);
  judge_order(selection, matter, violations);
  judge_pins(selection, matter, violations);
  judge_ceilings(selection, matter, violations);
  judge_clock(selection, matter, violations);
}

void recompute(const Selection& selection, const Matter& matter, Report& report) {
  const SessionTiming timing = time_session(selection, matter);
  for (std::size_t i = 0; i < selection.size(); ++i) {
    const Pick& pick = selection[i];
    const ItemTiming& time = timing.items[i];
    report.items.push_back({pick.drill->id, pick.drill->name, rung_of(pick).words,
                            dose_words(*pick.drill, step_of(pick)), time.rest_seconds, time.change_seconds,
                            time.takes_seconds, time.starts_seconds});
  }
  report.levels = levels_of(selection, matter);
  report.turnout = matter.tonight.turnout;
  report.age = matter.tonight.age;
  report.slot_seconds = matter.tonight.slot_seconds;
  report.gathering_seconds = timing.gathering_seconds;
  report.planned_seconds = timing.planned_seconds;
  report.margin_seconds = timing.margin_seconds;
  report.moving_permille = timing.moving_permille;
  const LoadSums sum = loads_of(selection, matter);
  const LoadSums most = ceilings_of(matter);
  report.loads = {{"contacts", (sum.contacts + 999) / 1000, most.contacts / 1000},
                  {"eccentric repetitions", (sum.eccentric + 999) / 1000, most.eccentric / 1000},
                  {"hard-running metres", (sum.hard_running + 999) / 1000, most.hard_running / 1000},
                  {"new drills", sum.new_drills, most.new_drills}};
  report.changes = departures_of(selection, matter);
  report.uncovered = uncovered_of(selection, matter);
}

}  // namespace lanework::check
