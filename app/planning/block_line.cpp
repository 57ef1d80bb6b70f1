#include "app/planning/block_line.h"

namespace lanework::planning {

std::optional<catalogue::RoutineLine> line_of(const read::BlockDrill& drill, const catalogue::Catalogue& catalogue) {
  const catalogue::Drill* known = catalogue.find(drill.drill);
  if (known == nullptr) return {};
  const int rung = catalogue::rung_index(*known, drill.rung);
  const int dose = catalogue::dose_index(*known, drill.sets, drill.amount);
  if (rung < 0 || dose < 0) return {};
  return catalogue::RoutineLine{static_cast<int>(known - catalogue.drills.data()), rung, dose};
}

}  // namespace lanework::planning
