#include "core/check/levels.h"

#include <algorithm>
#include <cstdlib>

#include "core/check/dose_words.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kMostCredits = 40;
constexpr std::int64_t kFullDose = 4;
constexpr std::int64_t kWeightScale = 4;
constexpr std::int64_t kWorkOfAPass = 8000;

std::int64_t up(std::int64_t a, std::int64_t b) { return a / b + (a % b != 0 ? 1 : 0); }

std::int64_t times_done(const Drill& drill, const Matter& matter) {
  const auto seen = matter.tonight.taught.find(drill.id);
  return seen == matter.tonight.taught.end() ? 0 : seen->second;
}

std::int64_t shortfall_of(const Family& family, const std::string& phase, const Selection& selection,
                          const Matter& matter) {
  std::int64_t target = 0;
  for (const RoutineLine& line : matter.routine) {
    const Drill& drill = matter.drills.at(line.drill);
    if (drill.family == family.key && drill.phase == phase) target += credits_of(drill, line.step, matter);
  }
  if (matter.tonight.more_than_routine && target > 0) target = std::max(target, kFullDose);
  target = std::min(target, kMostCredits);
  std::int64_t reached = 0;
  for (const Pick& pick : selection) {
    const bool ours = pick.drill->family == family.key && pick.drill->phase == phase;
    if (ours) reached += credits_of(*pick.drill, step_of(pick), matter);
  }
  const std::int64_t missing = std::max<std::int64_t>(0, target - reached);
  const std::int64_t twice = std::max<std::int64_t>(0, missing - target / 2);
  return family.weight * kWeightScale * (missing + twice);
}

void add_departures(const Drill& drill, const RoutineLine& line, const Pick* pick, std::vector<Departure>& out) {
  if (pick == nullptr) {
    out.push_back({"left-out", drill.id, dose_words(drill, line.step), ""});
    return;
  }
  const int rung = rung_position(drill, line.rung);
  const int step = step_position(drill, line.step);
  if (pick->rung != rung) {
    out.push_back({pick->rung < rung ? "easier-rung" : "harder-rung", drill.id,
                   drill.rungs[static_cast<std::size_t>(rung)].words, rung_of(*pick).words});
  }
  if (pick->step != step) {
    out.push_back({pick->step < step ? "smaller-dose" : "larger-dose", drill.id, dose_words(drill, line.step),
                   dose_words(drill, step_of(*pick))});
  }
}

}  // namespace

std::int64_t work_ms(const Drill& drill, const Step& step) {
  std::int64_t unit = kWorkOfAPass;
  if (drill.dose_kind == "reps") unit = drill.tempo_ms;
  if (drill.dose_kind == "seconds") unit = 1000;
  return std::int64_t{step.sets} * step.amount * unit * (drill.sides ? 2 : 1);
}

std::int64_t credits_of(const Drill& drill, const Step& step, const Matter& matter) {
  std::int64_t work = 100 * work_ms(drill, step);
  const Family* family = find_family(matter, drill.family);
  const std::int64_t full = 100 * 1000 * (family == nullptr ? 1 : family->session_seconds);
  const bool eccentric = drill.eccentric_thousandths > 0;
  if (family != nullptr && !eccentric && matter.tonight.age >= family->eccentric_from_age)
    work = work / 100 * family->other_work_percent;
  const std::int64_t whole = 4 * work / full;
  const std::int64_t rest = 4 * work % full;
  return std::clamp<std::int64_t>(whole + (2 * rest >= full ? 1 : 0), 1, kMostCredits);
}

LoadSums loads_of(const Pick& pick, const Matter& matter) {
  const Drill& drill = *pick.drill;
  const Step& step = step_of(pick);
  const std::int64_t factor = rung_of(pick).load_thousandths;
  const std::int64_t times = std::int64_t{step.sets} * step.amount * (drill.sides ? 2 : 1);
  // Thousandths of repetitions, seconds or metres.
  const std::int64_t units = times * (drill.dose_kind == "passes" ? matter.strip.lane_mm : 1000);
  const auto weight = matter.limits.contact_weight_thousandths.find(drill.intensity);
  LoadSums out;
  if (weight != matter.limits.contact_weight_thousandths.end()) {
    out.contacts = up(up(units * drill.contacts_thousandths, 1000) * weight->second * factor, 1'000'000);
  }
  out.eccentric = up(units * drill.eccentric_thousandths * factor, 1'000'000);
  if (drill.hard_running) out.hard_running = units;
  out.new_drills = routine_position(matter, drill.id) < 0 && times_done(drill, matter) == 0 ? 1 : 0;
  return out;
}

LoadSums loads_of(const Selection& selection, const Matter& matter) {
  LoadSums sum;
  for (const Pick& pick : selection) {
    const LoadSums one = loads_of(pick, matter);
    sum.contacts += one.contacts;
    sum.eccentric += one.eccentric;
    sum.hard_running += one.hard_running;
    sum.new_drills += one.new_drills;
  }
  return sum;
}

const Band& band_of(const Matter& matter) {
  const std::vector<Band>& bands = matter.limits.bands;
  const int age = std::clamp(matter.tonight.age, bands.front().age_from, bands.back().age_to);
  const auto holds_age = [&](const Band& band) { return age >= band.age_from && age <= band.age_to; };
  const auto found = std::find_if(bands.begin(), bands.end(), holds_age);
  return found == bands.end() ? bands.front() : *found;
}

LoadSums ceilings_of(const Matter& matter) {
  const Limits& limits = matter.limits;
  const Band& band = band_of(matter);
  MatchDay day;
  for (const MatchDay& row : limits.match) {
    if (matter.tonight.days_to_match && *matter.tonight.days_to_match == row.days) day = row;
  }
  const std::int64_t contacts = band.jump_cap * limits.warm_up_share_percent / 100;
  return {contacts * 10 * day.contacts_percent, band.eccentric * 10 * day.eccentric_percent,
          band.hard_running_metres * 10 * day.hard_running_percent, day.new_drills ? limits.most_new_drills : 0};
}

Levels levels_of(const Selection& selection, const Matter& matter) {
  const ChangeWeights& weights = matter.tonight.weights;
  Levels out;
  out.uncovered = static_cast<std::int64_t>(uncovered_of(selection, matter).size());
  for (const Family& family : matter.families) {
    for (const std::string& phase : family.phases) out.shortfall += shortfall_of(family, phase, selection, matter);
  }
  for (const RoutineLine& line : matter.routine) {
    const Pick* pick = find_pick(selection, line.drill);
    if (pick == nullptr) {
      out.changes += weights.left_out;
      continue;
    }
    out.changes += weights.dose_step * std::abs(pick->step - step_position(*pick->drill, line.step));
    out.changes += weights.rung_step * std::abs(pick->rung - rung_position(*pick->drill, line.rung));
  }
  for (const Pick& pick : selection) {
    if (routine_position(matter, pick.drill->id) >= 0) continue;
    const std::int64_t times = times_done(*pick.drill, matter);
    out.changes += weights.new_drill;
    out.preference += (times == 0 ? 8 : times < 3 ? 4 : 0) + pick.step + pick.rung;
  }
  return out;
}

std::vector<Departure> departures_of(const Selection& selection, const Matter& matter) {
  std::vector<Departure> out;
  for (const RoutineLine& line : matter.routine) {
    add_departures(matter.drills.at(line.drill), line, find_pick(selection, line.drill), out);
  }
  for (const Pick& pick : selection) {
    if (routine_position(matter, pick.drill->id) >= 0) continue;
    out.push_back({"new-drill", pick.drill->id, "", dose_words(*pick.drill, step_of(pick))});
  }
  return out;
}

std::vector<std::string> uncovered_of(const Selection& selection, const Matter& matter) {
  std::vector<std::string> out;
  for (const Family& family : matter.families) {
    const auto covers = [&](const Pick& pick) { return pick.drill->family == family.key; };
    if (family.required && std::none_of(selection.begin(), selection.end(), covers)) out.push_back(family.key);
  }
  return out;
}

}  // namespace lanework::check
