#include "app/cli/lane_remark.h"

#include "core/door/plan_answer.h"
#include "core/plan/routine_lanes.h"

namespace lanework::cli {
namespace {

constexpr Millimetres kShortLane{10'000};
constexpr Millimetres kLongLane{30'000};

// '17.1', '15': to the decimetre below, so that what is promised holds.
std::string metres(Millimetres length) {
  const std::int64_t decimetres = length.count / 100;
  std::string out = std::to_string(decimetres / 10);
  if (decimetres % 10 != 0) out += "." + std::to_string(decimetres % 10);
  return out;
}

std::string above_words(const plan::RoutineLanes& lanes, const catalogue::Catalogue& catalogue) {
  std::string changes;
  for (const session::Change& change : lanes.above->first_changes) {
    changes += (changes.empty() ? " (" : ", or ") + door::change_sentence(change, catalogue);
  }
  if (!changes.empty()) changes += ")";
  return std::string(plan::load_words(lanes.above->load)) + " pass " + std::to_string(lanes.above->ceiling) +
         ", the ceiling at age " + std::to_string(lanes.age) + changes;
}

}  // namespace

std::string lane_remark(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine) {
  const plan::RoutineLanes lanes = plan::routine_lanes(catalogue, routine);
  const bool below = lanes.shortest > kShortLane;
  const bool above = lanes.above && lanes.longest < kLongLane;
  if (!below && !above) return "";
  std::string out = routine.id + " stands as written on ";
  if (lanes.shortest > lanes.longest) {
    out += "no lane";
  } else {
    out += "lanes " + (below ? "from " + metres(lanes.shortest) : "") + (below && above ? " " : "") +
           (above ? "to " + metres(lanes.longest) : "") + " m";
  }
  if (above) out += "; longer: " + above_words(lanes, catalogue);
  if (below) {
    const catalogue::Drill& drill = catalogue.drills[static_cast<std::size_t>(lanes.needs_shortest)];
    out += "; shorter: " + drill.name + " needs " + metres(lanes.shortest) + " m";
  }
  return out;
}

}  // namespace lanework::cli
