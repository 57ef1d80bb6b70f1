#include "core/session/strip.h"

namespace lanework::session {

int cones_a_line(const Strip& strip) {
  return static_cast<int>(strip.lane_length.count / strip.cone_spacing.count) + 1;
}

Result<Strip> read_strip(const Document& document) {
  Faults faults;
  TableReader reader(document.file, &document.root, "", faults);
  Strip strip;
  strip.name = reader.text_or("name", "the strip");
  strip.lane_length = Millimetres(reader.scaled("lane_length_metres", 1000, 5, 60));
  strip.cone_spacing = Millimetres(reader.scaled("cone_spacing_metres", 1000, 1, 20));
  strip.lanes = static_cast<int>(reader.integer("lanes", 1, 12));
  strip.lane_gap = Millimetres(reader.scaled_or("lane_gap_metres", 1000, 3, 1, 20));
  TableReader area = reader.table("area_metres");
  if (!area.present() && !reader.has("area_metres")) {
    reader.fault(FaultCode::kMissing, "area_metres", "nothing", "a table with width and length in metres");
  }
  strip.area_width = Millimetres(area.scaled("width", 1000, 2, 120));
  strip.area_length = Millimetres(area.scaled("length", 1000, 2, 120));
  area.finish();
  for (const std::string& name : reader.texts("surface")) {
    bool known = false;
    for (std::size_t i = 0; i < catalogue::surface_words().size(); ++i) {
      if (catalogue::surface_words()[i] != name) continue;
      strip.surface.push_back(static_cast<catalogue::Surface>(i));
      known = true;
    }
    if (!known) reader.fault(FaultCode::kUnknownName, "surface", quote(name), "wet, hard, uneven or dark");
  }
  strip.wall = reader.boolean_or("wall", false);
  strip.soft_ground = reader.boolean_or("soft_ground", false);
  strip.line = reader.boolean_or("line", false);
  strip.venue = reader.text_or("venue", "");
  reader.finish();
  if (faults.empty() && strip.cone_spacing > strip.lane_length) {
    reader.fault(FaultCode::kContradiction, "cone_spacing_metres", "a spacing longer than the lane",
                 "at most lane_length_metres");
  }
  if (!faults.empty()) return faults;
  return strip;
}

}  // namespace lanework::session
