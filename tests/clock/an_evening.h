// Drills and an evening by hand, for the clock's tests: small numbers that can be worked out on paper.
#pragma once

#include <string>

#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"
#include "core/session/session.h"

namespace lanework::clock {

inline catalogue::Gait steady_gait(const std::string& key, std::int64_t speed, int spread_thousandths = 0) {
  catalogue::Gait gait;
  gait.key = key;
  gait.name = key;
  gait.speed.fill(MillimetresPerSecond(speed));
  gait.spread_thousandths = spread_thousandths;
  return gait;
}

inline catalogue::Drill a_drill(const std::string& id, catalogue::Formation formation, catalogue::DoseKind kind) {
  catalogue::Drill drill;
  drill.id = id;
  drill.name = id;
  drill.family = catalogue::Family::kTrunk;
  drill.phase = catalogue::Phase::kBuild;
  drill.formation = formation;
  drill.age_from = 8;
  drill.age_to = 19;
  drill.rungs.resize(2);
  drill.dose.kind = kind;
  drill.telling = Milliseconds(20000);
  return drill;
}

// Out at 2.5 m/s and back at 2.0 m/s, 2 s between starts, 1 s to turn.
inline catalogue::Drill a_lane_drill(const std::string& id = "laps") {
  catalogue::Drill drill = a_drill(id, catalogue::Formation::kLane, catalogue::DoseKind::kPasses);
  drill.lane.out_gait = "jog";
  drill.lane.back_gait = "walk";
  drill.lane.turn = Milliseconds(1000);
  drill.lane.release_gap = Milliseconds(2000);
  drill.dose.steps = {{1, 1}, {1, 2}, {2, 2}};
  return drill;
}

// 2 x 10 s a side, 5 s to change sides, 8 s rest; 2 m by 2 m each.
inline catalogue::Drill a_hold(const std::string& id = "hold") {
  catalogue::Drill drill = a_drill(id, catalogue::Formation::kSpread, catalogue::DoseKind::kSeconds);
  drill.dose.sides = true;
  drill.dose.rest = Milliseconds(8000);
  drill.dose.side_change = Milliseconds(5000);
  drill.dose.steps = {{1, 10}, {2, 10}};
  drill.space_width = Millimetres(2000);
  drill.space_length = Millimetres(2000);
  return drill;
}

// 5 repetitions of 4 s a partner, 6 s to swap.
inline catalogue::Drill a_pairs_drill(const std::string& id = "lowers") {
  catalogue::Drill drill = a_drill(id, catalogue::Formation::kPairs, catalogue::DoseKind::kReps);
  drill.dose.tempo = Milliseconds(4000);
  drill.dose.rest = Milliseconds(30000);
  drill.dose.steps = {{1, 5}, {2, 5}};
  drill.pair.swap = Milliseconds(6000);
  drill.space_width = Millimetres(2000);
  drill.space_length = Millimetres(3000);
  return drill;
}

// Gaits jog 2.5, walk 2.0, run 6.0 m/s; the spread between players is 100 thousandths.
inline catalogue::Catalogue a_catalogue() {
  catalogue::Catalogue catalogue;
  catalogue.drills = {a_hold(), a_lane_drill(), a_pairs_drill()};
  catalogue.gaits = {steady_gait("jog", 2500, 100), steady_gait("run", 6000, 100), steady_gait("walk", 2000, 100)};
  return catalogue;
}

// 14 players of 12 on two lanes of 15 m with cones every 5 m, an area of 20 m by 15 m.
inline session::Evening an_evening() {
  session::Evening evening;
  evening.slot = Seconds(1200);
  evening.turnout = 14;
  evening.age = 12;
  evening.strip.lane_length = Millimetres(15000);
  evening.strip.cone_spacing = Millimetres(5000);
  evening.strip.lanes = 2;
  evening.strip.lane_gap = Millimetres(3000);
  evening.strip.area_width = Millimetres(20000);
  evening.strip.area_length = Millimetres(15000);
  evening.seed = 20261126;
  return evening;
}

}  // namespace lanework::clock
