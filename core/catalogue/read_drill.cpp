#include <algorithm>

#include "core/catalogue/drill_rules.h"
#include "core/catalogue/fields.h"
#include "core/catalogue/read_catalogue.h"

namespace lanework::catalogue {
namespace {

constexpr std::int64_t kThousand = 1000;

Milliseconds read_time(TableReader& table, std::string_view key, double fallback, double most) {
  return Milliseconds(table.scaled_or(key, kThousand, fallback, 0, most));
}

std::vector<Stress> read_stresses(TableReader& parent, std::size_t least, int least_grade) {
  std::vector<Stress> out;
  for (TableReader& row : read_tables(parent, "stress", least, 20)) {
    const Stress stress{static_cast<BodyArea>(row.word("area", body_area_words())),
                        static_cast<StressKind>(row.word("kind", stress_kind_words())),
                        static_cast<int>(row.integer("grade", least_grade, 3))};
    row.finish();
    const auto same = [&](const Stress& s) { return s.area == stress.area && s.kind == stress.kind; };
    if (std::any_of(out.begin(), out.end(), same)) {
      row.fault(FaultCode::kDuplicate, "kind", quote(std::string(word(stress_kind_words(), stress.kind))),
                "each area and kind once");
    }
    out.push_back(stress);
  }
  return out;
}

std::vector<Rung> read_rungs(TableReader& drill) {
  std::vector<Rung> out;
  for (TableReader& row : read_tables(drill, "rung", 2, 4)) {
    Rung rung;
    rung.key = read_key(row, "key");
    rung.change = row.text("change");
    rung.age_from = static_cast<int>(row.integer_or("ages_from", 0, kYoungestAge, kOldestAge));
    rung.stress = read_stresses(row, 0, 0);
    rung.needs = read_enumerators<Need>(row, "needs", need_words());
    rung.load_thousandths = row.scaled_or("load", kThousand, 1, 0, 3);
    row.finish();
    out.push_back(std::move(rung));
  }
  return out;
}

const std::vector<std::string_view>& dose_kind_words() {
  static const std::vector<std::string_view> kWords = {"reps", "seconds", "passes"};
  return kWords;
}

Dose read_dose(TableReader& drill) {
  Dose out;
  if (!drill.has("dose")) drill.fault(FaultCode::kMissing, "dose", "nothing", "a table [dose]");
  TableReader table = drill.table("dose");
  if (!table.present()) return out;
  out.kind = static_cast<DoseKind>(table.word("kind", dose_kind_words()));
  out.sides = table.boolean_or("sides", false);
  out.tempo = read_time(table, "tempo_seconds", 0, 60);
  out.rest = read_time(table, "rest_seconds", 0, 300);
  out.side_change = read_time(table, "side_change_seconds", 0, 60);
  for (TableReader& row : read_tables(table, "steps", 1, 5)) {
    DoseStep step;
    step.sets = static_cast<int>(row.integer("sets", 1, 6));
    step.amount = static_cast<int>(row.integer("amount", 1, 180));
    row.finish();
    out.steps.push_back(step);
  }
  table.finish();
  return out;
}

const std::vector<std::string_view>& lane_shape_words() {
  static const std::vector<std::string_view> kWords = {"out-and-back", "one-way", "facing"};
  return kWords;
}

LaneWork read_lane(TableReader& drill) {
  LaneWork out;
  TableReader table = drill.table("lane");
  if (!table.present()) return out;
  out.shape = static_cast<LaneShape>(table.word("shape", lane_shape_words()));
  out.out_gait = read_key(table, "out");
  out.out_share_of_top_speed = static_cast<int>(table.integer_or("share_of_top_speed", 0, 30, 100));
  // Only out and back has a way back at a gait of its own.
  if (out.shape == LaneShape::kOutAndBack || table.has("back")) {
    out.back_gait = read_key(table, "back");
  } else {
    out.back_gait = table.text_or("back", "walk");
  }
  out.stops_at_cones = table.boolean_or("stop_at_cones", false);
  out.stop = read_time(table, "stop_seconds", 0, 30);
  out.turn = read_time(table, "turn_seconds", 0, 30);
  out.release_gap = Milliseconds(table.scaled("release_gap_seconds", kThousand, 0.5, 30));
  out.least_lane = Millimetres(table.scaled_or("least_lane_metres", kThousand, 5, 5, 60));
  table.finish();
  return out;
}

PairWork read_pair(TableReader& drill) {
  PairWork out;
  TableReader table = drill.table("pair");
  out.both_at_once = table.boolean_or("both_at_once", false);
  out.swap = read_time(table, "swap_seconds", 0, 60);
  table.finish();
  return out;
}

Loads read_loads(TableReader& drill) {
  Loads out;
  TableReader table = drill.table("loads");
  out.contacts_thousandths = table.scaled_or("contacts", kThousand, 0, 0, 10);
  out.intensity = static_cast<ContactIntensity>(table.word("intensity", intensity_words(), 0));
  out.eccentric_thousandths = table.scaled_or("eccentric", kThousand, 0, 0, 5);
  out.hard_running = table.boolean_or("hard_running", false);
  table.finish();
  return out;
}

std::vector<WatchFor> read_watch(TableReader& drill) {
  std::vector<WatchFor> out;
  for (TableReader& row : read_tables(drill, "watch", 1, 4)) {
    WatchFor watch{row.text("fault"), row.text("cue")};
    row.finish();
    out.push_back(std::move(watch));
  }
  return out;
}

DrillSources read_drill_sources(TableReader& drill) {
  DrillSources out;
  if (!drill.has("sources")) drill.fault(FaultCode::kMissing, "sources", "nothing", "a table [sources]");
  TableReader table = drill.table("sources");
  if (!table.present()) return out;
  out.dose = read_sources(table, "dose");
  out.timing = read_sources(table, "timing");
  // A drill that counts against no ceiling has nothing to vouch for.
  out.loads = drill.has("loads") ? read_sources(table, "loads") : table.texts("loads");
  out.stress = read_sources(table, "stress");
  out.technique = read_sources(table, "technique");
  table.finish();
  return out;
}

void read_space(TableReader& drill, Drill& out) {
  TableReader space = drill.table("space_metres");
  if (!space.present()) return;
  out.space_width = Millimetres(space.scaled("width", kThousand, 0.5, 20));
  out.space_length = Millimetres(space.scaled("length", kThousand, 0.5, 20));
  space.finish();
}

figure::Figure read_drill_figure(TableReader& drill) {
  if (!drill.has("figure")) {
    drill.table("figure");
    drill.fault(FaultCode::kMissing, "figure", "nothing", "a table [figure] with key poses");
    return {};
  }
  return figure::read_figure(drill.table("figure"));
}

// [rung_figure.<key of a rung>]: below the drill's own, so that the ladder stays readable in one look.
void read_rung_figures(TableReader& drill, std::vector<Rung>& rungs) {
  TableReader figures = drill.table("rung_figure");
  for (Rung& rung : rungs) {
    if (!rung.key.empty()) rung.figure = figure::read_figure(figures.table(rung.key));
  }
  figures.finish();
}

}  // namespace

Result<Drill> read_drill(const Document& document) {
  Faults faults;
  TableReader table(document.file, &document.root, {}, faults);
  Drill drill{};
  drill.file = document.file;
  drill.id = read_id(table, document.file);
  drill.name = table.text("name");
  drill.family = static_cast<Family>(table.word("family", family_words()));
  drill.phase = static_cast<Phase>(table.word("phase", phase_words()));
  drill.formation = static_cast<Formation>(table.word("formation", formation_words()));
  const AgeRange ages = read_ages(table);
  drill.age_from = ages.from;
  drill.age_to = ages.to;
  drill.purpose = table.text("purpose");
  drill.how = table.text("how");
  drill.telling = Milliseconds(table.scaled("telling_seconds", kThousand, 0, 180));
  read_space(table, drill);
  drill.needs = read_enumerators<Need>(table, "needs", need_words());
  drill.not_on = read_enumerators<Surface>(table, "not_on", surface_words());
  drill.cues = read_lines(table, "cues", 1, 3);
  drill.stop_if = read_lines(table, "stop_if", 1, 3);
  drill.rungs = read_rungs(table);
  drill.dose = read_dose(table);
  drill.lane = read_lane(table);
  drill.pair = read_pair(table);
  drill.watch = read_watch(table);
  drill.stress = read_stresses(table, 1, 1);
  drill.loads = read_loads(table);
  drill.sources = read_drill_sources(table);
  drill.figure = read_drill_figure(table);
  read_rung_figures(table, drill.rungs);
  if (faults.empty()) check_drill(drill, table);
  table.finish();
  if (!faults.empty()) return faults;
  return drill;
}

}  // namespace lanework::catalogue
