// docs/formats/drill.md
#include <utility>

#include "core/check/read_matter.h"

namespace lanework::check {
namespace {

constexpr double kMuch = 1e6;

std::int64_t thousandths(TableReader& table, std::string_view key, double fallback) {
  return table.scaled_or(key, 1000, fallback, 0, kMuch);
}

std::vector<Stress> read_stress(TableReader& table) {
  std::vector<Stress> out;
  for (TableReader& row : table.tables("stress")) {
    out.push_back({row.text("area"), row.text("kind"), static_cast<int>(row.integer("grade", 0, 3))});
  }
  return out;
}

Rung read_rung(TableReader& table) {
  Rung rung;
  rung.key = table.text("key");
  rung.words = table.text("change");
  rung.age_from = static_cast<int>(table.integer_or("ages_from", 0, 0, 100));
  rung.stress = read_stress(table);
  rung.needs = table.texts("needs");
  rung.load_thousandths = thousandths(table, "load", 1);
  return rung;
}

void read_dose(TableReader& drill, Drill& out) {
  TableReader dose = drill.table("dose");
  out.dose_kind = dose.text("kind");
  out.sides = dose.boolean_or("sides", false);
  out.tempo_ms = thousandths(dose, "tempo_seconds", 0);
  out.rest_ms = thousandths(dose, "rest_seconds", 0);
  out.side_change_ms = thousandths(dose, "side_change_seconds", 0);
  for (TableReader& row : dose.tables("steps")) {
    out.steps.push_back(
        {static_cast<int>(row.integer("sets", 1, 1000)), static_cast<int>(row.integer("amount", 1, 1000))});
  }
}

void read_lane(TableReader& drill, Lane& out) {
  constexpr double kShortestLane = 5;
  TableReader lane = drill.table("lane");
  out.shape = lane.text("shape");
  out.out = lane.text("out");
  out.back = lane.text_or("back", "walk");
  out.share_of_top_speed = static_cast<int>(lane.integer_or("share_of_top_speed", 0, 0, 100));
  out.stops_at_cones = lane.boolean_or("stop_at_cones", false);
  out.stop_ms = thousandths(lane, "stop_seconds", 0);
  out.turn_ms = thousandths(lane, "turn_seconds", 0);
  out.gap_ms = lane.scaled("release_gap_seconds", 1000, 0, kMuch);
  out.least_mm = thousandths(lane, "least_lane_metres", kShortestLane);
}

Drill read_drill(TableReader& table) {
  Drill drill;
  drill.id = table.text("id");
  drill.name = table.text("name");
  drill.family = table.text("family");
  drill.phase = table.text("phase");
  drill.formation = table.text("formation");
  TableReader ages = table.table("ages");
  drill.age_from = static_cast<int>(ages.integer("from", 0, 100));
  drill.age_to = static_cast<int>(ages.integer("to", 0, 100));
  drill.telling_ms = thousandths(table, "telling_seconds", 0);
  TableReader space = table.table("space_metres");
  drill.width_mm = thousandths(space, "width", 0);
  drill.length_mm = thousandths(space, "length", 0);
  drill.needs = table.texts("needs");
  drill.not_on = table.texts("not_on");
  for (TableReader& row : table.tables("rung")) drill.rungs.push_back(read_rung(row));
  read_dose(table, drill);
  if (table.has("lane")) read_lane(table, drill.lane);
  TableReader pair = table.table("pair");
  drill.both_at_once = pair.boolean_or("both_at_once", false);
  drill.swap_ms = thousandths(pair, "swap_seconds", 0);
  drill.stress = read_stress(table);
  TableReader loads = table.table("loads");
  drill.contacts_thousandths = thousandths(loads, "contacts", 0);
  drill.intensity = loads.text_or("intensity", "low");
  drill.eccentric_thousandths = thousandths(loads, "eccentric", 0);
  drill.hard_running = loads.boolean_or("hard_running", false);
  return drill;
}

}  // namespace

void read_drills(TableReader& catalogue, Matter& matter) {
  for (TableReader& table : catalogue.tables("drills")) {
    Drill drill = read_drill(table);
    const std::string id = drill.id;
    matter.drills.emplace(id, std::move(drill));
  }
}

}  // namespace lanework::check
