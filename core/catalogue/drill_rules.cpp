#include "core/catalogue/drill_rules.h"

#include <algorithm>

#include "core/catalogue/fields.h"

namespace lanework::catalogue {
namespace {

constexpr int kMostWordsACue = 8;

void contradiction(TableReader& table, std::string_view key, std::string found, std::string expected) {
  table.fault(FaultCode::kContradiction, key, std::move(found), std::move(expected));
}

// A table that one formation needs and the others may not have.
void check_table_of(TableReader& table, std::string_view key, bool needed, std::string_view formation) {
  if (needed && !table.has(key)) {
    table.fault(FaultCode::kMissing, key, "nothing",
                "a table [" + std::string(key) + "], as the formation is " + std::string(formation));
  }
  if (!needed && table.has(key)) {
    contradiction(table, key, "a table", "no such table, as the formation is " + std::string(formation));
  }
}

void check_formation(const Drill& drill, TableReader& table) {
  const std::string_view formation = word(formation_words(), drill.formation);
  check_table_of(table, "lane", drill.formation == Formation::kLane, formation);
  check_table_of(table, "pair", drill.formation == Formation::kPairs, formation);
  check_table_of(table, "space_metres", drill.formation != Formation::kLane, formation);
  const bool partner = std::find(drill.needs.begin(), drill.needs.end(), Need::kPartner) != drill.needs.end();
  if (drill.formation == Formation::kPairs && !partner) {
    contradiction(table, "needs", "no 'partner'", "'partner' among the needs of a drill in pairs");
  }
}

void check_cues(const Drill& drill, TableReader& table) {
  for (const std::string& cue : drill.cues) {
    if (count_words(cue) > kMostWordsACue) {
      contradiction(table, "cues", quote(cue), "at most " + std::to_string(kMostWordsACue) + " words");
    }
  }
}

void check_rungs(const Drill& drill, std::vector<TableReader> rungs) {
  int floor = drill.age_from;
  for (std::size_t i = 0; i < drill.rungs.size(); ++i) {
    const Rung& rung = drill.rungs[i];
    for (std::size_t j = 0; j < i; ++j) {
      if (drill.rungs[j].key == rung.key) {
        rungs[i].fault(FaultCode::kDuplicate, "key", quote(rung.key), "a key of its own for every rung");
      } else if (drill.rungs[j].change == rung.change) {
        rungs[i].fault(FaultCode::kDuplicate, "change", quote(rung.change), "words of its own for every rung");
      }
    }
    if (rung.age_from == 0) continue;
    if (i == 0 && rung.age_from > drill.age_from) {
      contradiction(rungs[i], "ages_from", std::to_string(rung.age_from),
                    "no later age floor on the easiest rung than the drill's, " + std::to_string(drill.age_from));
    } else if (rung.age_from < floor || rung.age_from > drill.age_to) {
      contradiction(rungs[i], "ages_from", std::to_string(rung.age_from),
                    "an age from " + std::to_string(floor) + " to " + std::to_string(drill.age_to) +
                        ", not below an easier rung's");
    }
    floor = std::max(floor, rung.age_from);
  }
}

void check_dose(const Drill& drill, TableReader dose) {
  const bool lane = drill.formation == Formation::kLane;
  const bool passes = drill.dose.kind == DoseKind::kPasses;
  if (lane != passes) {
    contradiction(dose, "kind", passes ? "'passes'" : "another kind than 'passes'",
                  lane ? "'passes', as the formation is lane" : "'reps' or 'seconds', as the formation is not lane");
  }
  if (drill.dose.kind == DoseKind::kReps && drill.dose.tempo.count == 0) {
    dose.fault(FaultCode::kMissing, "tempo_seconds", "nothing", "seconds of one repetition, above 0");
  }
  if (drill.dose.kind != DoseKind::kReps && drill.dose.tempo.count > 0) {
    contradiction(dose, "tempo_seconds", "a tempo", "none, as the dose is not counted in reps");
  }
  if (!drill.dose.sides && drill.dose.side_change.count > 0) {
    contradiction(dose, "side_change_seconds", "a side change", "none, as the drill has no sides");
  }
  std::vector<TableReader> steps = dose.tables("steps");
  for (std::size_t i = 1; i < drill.dose.steps.size(); ++i) {
    const DoseStep& less = drill.dose.steps[i - 1];
    const DoseStep& more = drill.dose.steps[i];
    if (less.sets * less.amount >= more.sets * more.amount) {
      contradiction(
          steps[i], "amount", std::to_string(more.sets) + " x " + std::to_string(more.amount),
          "more work than the step before, " + std::to_string(less.sets) + " x " + std::to_string(less.amount));
    }
  }
}

void check_lane(const Drill& drill, TableReader lane) {
  const bool run = drill.lane.out_gait == "run";
  if (run && drill.lane.out_share_of_top_speed == 0) {
    lane.fault(FaultCode::kMissing, "share_of_top_speed", "nothing", "the percent of top speed, as out is 'run'");
  }
  if (!run && drill.lane.out_share_of_top_speed != 0) {
    contradiction(lane, "share_of_top_speed", std::to_string(drill.lane.out_share_of_top_speed),
                  "none, as out is not 'run'");
  }
  if (drill.lane.back_gait == "run") contradiction(lane, "back", "'run'", "a gait slower than running");
  if (drill.lane.stops_at_cones && drill.lane.stop.count == 0) {
    lane.fault(FaultCode::kMissing, "stop_seconds", "nothing", "seconds of a stop, as it stops at cones");
  }
  if (!drill.lane.stops_at_cones && drill.lane.stop.count > 0) {
    contradiction(lane, "stop_seconds", "a stop", "none, as it does not stop at cones");
  }
}

bool asks(const Drill& drill, StressKind kind) {
  return std::any_of(drill.stress.begin(), drill.stress.end(), [kind](const Stress& s) { return s.kind == kind; });
}

// A restriction is matched against stresses, so a load without its stress would slip past it.
void check_loads(const Drill& drill, TableReader loads) {
  if (drill.loads.contacts_thousandths > 0 && !asks(drill, StressKind::kImpact)) {
    contradiction(loads, "contacts", "landings", "none, or a stress of kind 'impact'");
  }
  const bool back_thigh = std::any_of(drill.stress.begin(), drill.stress.end(), [](const Stress& s) {
    return s.area == BodyArea::kBackThigh && s.kind == StressKind::kLoad;
  });
  if (drill.loads.eccentric_thousandths > 0 && !back_thigh) {
    contradiction(loads, "eccentric", "eccentric hamstring work", "none, or a stress of kind 'load' on the back-thigh");
  }
  if (!drill.loads.hard_running) return;
  if (drill.formation != Formation::kLane) contradiction(loads, "hard_running", "true", "false outside a lane");
  if (!asks(drill, StressKind::kSpeed)) {
    contradiction(loads, "hard_running", "true", "false, or a stress of kind 'speed'");
  }
}

}  // namespace

void check_drill(const Drill& drill, TableReader& table) {
  check_formation(drill, table);
  check_cues(drill, table);
  check_rungs(drill, table.tables("rung"));
  check_dose(drill, table.table("dose"));
  if (drill.formation == Formation::kLane) check_lane(drill, table.table("lane"));
  check_loads(drill, table.table("loads"));
}

}  // namespace lanework::catalogue
