#include "core/check/offered.h"

#include <algorithm>

#include "core/check/barred.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kTimesUntilKnown = 3;

// Can the routine's own drill be done at or below the routine's rung?
bool can_be_done(const RoutineLine& line, const Matter& matter) {
  const Drill& drill = matter.drills.at(line.drill);
  const int most =
      matter.tonight.free_composition ? static_cast<int>(drill.rungs.size()) - 1 : rung_position(drill, line.rung);
  const std::vector<int> open = open_rungs(drill, matter);
  return !open.empty() && open.front() <= most;
}

// One of the family is barred, or the family is required and no drill of the routine can cover it.
bool may_stand_in(const std::string& family, const Matter& matter) {
  bool barred = false;
  bool covered = false;
  for (const RoutineLine& line : matter.routine) {
    if (matter.drills.at(line.drill).family != family) continue;
    (can_be_done(line, matter) ? covered : barred) = true;
  }
  const Family* row = find_family(matter, family);
  return barred || (row != nullptr && row->required && !covered);
}

std::string routine_limit(const Pick& pick, const RoutineLine& line, const Matter& matter) {
  const Tonight& tonight = matter.tonight;
  if (tonight.free_composition) return "";
  if (pick.rung > rung_position(*pick.drill, line.rung)) return "the routine's rung or an easier one";
  const bool larger = pick.step > step_position(*pick.drill, line.step);
  return larger && !tonight.more_than_routine ? "the routine's dose or a smaller one" : "";
}

std::string limit_of(const Pick& pick, const Matter& matter) {
  const int line = routine_position(matter, pick.drill->id);
  if (line >= 0) return routine_limit(pick, matter.routine[static_cast<std::size_t>(line)], matter);
  if (matter.tonight.free_composition) return "";
  if (!may_stand_in(pick.drill->family, matter)) return "a drill of the routine: nothing of this family is barred";
  const auto seen = matter.tonight.taught.find(pick.drill->id);
  if (seen != matter.tonight.taught.end() && seen->second >= kTimesUntilKnown) return "";
  const std::vector<int> open = open_rungs(*pick.drill, matter);
  return open.empty() || pick.rung <= open.front() ? "" : "the easiest rung, until the squad has done it three times";
}

}  // namespace

bool new_eccentric_too_late(const Drill& drill, const Matter& matter) {
  const auto seen = matter.tonight.taught.find(drill.id);
  const bool done_before = seen != matter.tonight.taught.end() && seen->second > 0;
  if (drill.eccentric_thousandths == 0 || done_before || routine_position(matter, drill.id) >= 0) return false;
  return eccentric_work_is_cut(matter);
}

bool eccentric_work_is_cut(const Matter& matter) {
  return std::any_of(matter.limits.match.begin(), matter.limits.match.end(), [&](const MatchDay& row) {
    return matter.tonight.days_to_match && *matter.tonight.days_to_match == row.days && row.eccentric_percent < 100;
  });
}

bool keeps(const Pick& pick, const Pin& pin) {
  if (!pin.rung.empty() && rung_of(pick).key != pin.rung) return false;
  return !pin.step || (step_of(pick).sets == pin.step->sets && step_of(pick).amount == pin.step->amount);
}

std::string not_offered(const Pick& pick, const Matter& matter) {
  if (new_eccentric_too_late(*pick.drill, matter)) return "no new eccentric work this close to a match";
  std::string limit = limit_of(pick, matter);
  if (limit.empty()) return limit;
  // A pinned drill enters in any case; what the pin names, it names.
  const int line = routine_position(matter, pick.drill->id);
  for (const Pin& pin : matter.tonight.pins) {
    if (pin.drill != pick.drill->id || !keeps(pick, pin)) continue;
    if (line < 0) return "";
    Pick at_pin = pick;
    const RoutineLine& own = matter.routine[static_cast<std::size_t>(line)];
    if (!pin.rung.empty()) at_pin.rung = std::min(pick.rung, rung_position(*pick.drill, own.rung));
    if (pin.step) at_pin.step = std::min(pick.step, step_position(*pick.drill, own.step));
    return routine_limit(at_pin, own, matter);
  }
  return limit;
}

}  // namespace lanework::check
