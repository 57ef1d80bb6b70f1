#include "core/plan/availability.h"

#include <algorithm>

#include "core/people/swaps.h"

namespace lanework::plan {
namespace {

using catalogue::Drill;
using catalogue::Formation;
using catalogue::Need;
using session::Evening;

std::string missing_need(Need need, const Evening& evening) {
  const int players = evening.turnout;
  switch (need) {
    case Need::kPartner:
      return players < 2 ? "it needs a partner" : "";
    case Need::kWall:
      return evening.strip.wall ? "" : "it needs a wall";
    case Need::kBallEach:
      return evening.kit.balls >= players ? "" : "it needs a ball each: " + std::to_string(players) + " balls";
    case Need::kBallAPair:
      return evening.kit.balls >= (players + 1) / 2
                 ? ""
                 : "it needs a ball a pair: " + std::to_string((players + 1) / 2) + " balls";
    case Need::kMat:
      return evening.kit.mats >= players ? "" : "it needs a mat each";
    case Need::kSoftGround:
      return evening.strip.soft_ground || evening.kit.mats >= players ? "" : "it needs soft ground";
    case Need::kLine:
      return evening.strip.line ? "" : "it needs a painted line";
  }
  return "";
}

std::string wrong_place(const Drill& drill, const Evening& evening) {
  for (const catalogue::Surface surface : drill.not_on) {
    const auto& here = evening.strip.surface;
    if (std::find(here.begin(), here.end(), surface) != here.end()) {
      const std::string word(catalogue::word(catalogue::surface_words(), surface));
      return surface == catalogue::Surface::kDark ? "it is not done in the dark"
                                                  : "it is not done on " + word + " ground";
    }
  }
  if (drill.formation != Formation::kLane) return "";
  if (evening.strip.lane_length < drill.lane.least_lane) {
    return "it needs a lane of " + std::to_string((drill.lane.least_lane.count + 999) / 1000) + " m";
  }
  const int cones = 2 * evening.strip.lanes;
  if (evening.kit.cones < cones && !evening.strip.line) {
    return "its lanes need " + std::to_string(cones) + " cones or painted lines";
  }
  return "";
}

}  // namespace

std::string barred_because(const Drill& drill, int rung_index, const Evening& evening) {
  const catalogue::Rung& rung = drill.rungs[static_cast<std::size_t>(rung_index)];
  if (std::find(evening.bans.begin(), evening.bans.end(), drill.id) != evening.bans.end())
    return "it is banned tonight";
  const int floor = std::max(drill.age_from, rung.age_from);
  if (evening.age < floor) return "it is for players of " + std::to_string(floor) + " and older";
  if (evening.age > drill.age_to) return "it is for players up to " + std::to_string(drill.age_to);
  if (!people::permits_all(evening.restrictions, drill, rung)) return "the whole squad is held back from it";
  for (const Need need : drill.needs) {
    if (std::string missing = missing_need(need, evening); !missing.empty()) return missing;
  }
  for (const Need need : rung.needs) {
    if (std::string missing = missing_need(need, evening); !missing.empty()) return missing;
  }
  return wrong_place(drill, evening);
}

std::string barred_because(const Drill& drill, const Evening& evening) {
  std::string first;
  for (int rung = 0; rung < static_cast<int>(drill.rungs.size()); ++rung) {
    std::string reason = barred_because(drill, rung, evening);
    if (reason.empty()) return "";
    if (first.empty()) first = std::move(reason);
  }
  return first;
}

}  // namespace lanework::plan
