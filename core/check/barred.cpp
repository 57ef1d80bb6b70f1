#include "core/check/barred.h"

#include <algorithm>

namespace lanework::check {
namespace {

// The drill's stresses with those of the rung in their place.
std::vector<Stress> stresses_of(const Drill& drill, const Rung& rung) {
  std::vector<Stress> out = rung.stress;
  for (const Stress& stress : drill.stress) {
    const auto replaces = [&](const Stress& s) { return s.area == stress.area && s.kind == stress.kind; };
    if (std::none_of(rung.stress.begin(), rung.stress.end(), replaces)) out.push_back(stress);
  }
  return out;
}

bool names(const std::vector<std::string>& list, const std::string& word) { return list.empty() || holds(list, word); }

bool held_back(const SquadRestriction& restriction, const std::vector<Stress>& stresses) {
  return restriction.sits_out || std::any_of(stresses.begin(), stresses.end(), [&](const Stress& stress) {
           return names(restriction.areas, stress.area) && names(restriction.kinds, stress.kind) &&
                  stress.grade > restriction.allowed_grade;
         });
}

// What a need asks for and what is there; true when that is enough.
struct Supply {
  bool enough = true;
  std::string there;
  std::string asked;
};

Supply count_of(const std::string& what, int there, int asked) {
  return {there >= asked, std::to_string(there) + " " + what, std::to_string(asked) + " " + what + " or more"};
}

Supply supply_for(const std::string& need, const Matter& matter) {
  const Tonight& tonight = matter.tonight;
  const int players = tonight.turnout;
  if (need == "partner") return count_of("players", players, 2);
  if (need == "wall") return {matter.strip.wall, "no wall", "a wall"};
  if (need == "ball-each") return count_of("balls", tonight.balls, players);
  if (need == "ball-a-pair") return count_of("balls", tonight.balls, (players + 1) / 2);
  if (need == "mat") return count_of("mats", tonight.mats, players);
  if (need == "soft-ground") {
    const bool soft = matter.strip.soft_ground || tonight.mats >= players;
    return {soft, "hard ground and " + std::to_string(tonight.mats) + " mats", "soft ground, or a mat each"};
  }
  if (need == "line") return {matter.strip.line, "no painted line", "a painted line"};
  return {false, "a need nobody knows: " + need, "a need of the drill format"};
}

void judge_place(const Drill& drill, const Matter& matter, std::vector<Bar>& bars) {
  for (const std::string& surface : matter.strip.surface) {
    if (holds(drill.not_on, surface)) bars.push_back({"surface", surface, "a drill that is done on " + surface});
  }
  if (drill.formation != "lane") return;
  const Strip& strip = matter.strip;
  if (strip.lane_mm < drill.lane.least_mm) {
    bars.push_back({"lane-too-short", std::to_string(strip.lane_mm) + " mm of lane",
                    std::to_string(drill.lane.least_mm) + " mm or more"});
  }
  if (matter.tonight.cones < 2 * strip.lanes && !strip.line) {
    bars.push_back({"cones", std::to_string(matter.tonight.cones) + " cones, no painted lines",
                    std::to_string(2 * strip.lanes) + " cones for " + std::to_string(strip.lanes) + " lanes"});
  }
}

}  // namespace

std::vector<Bar> bars_of(const Drill& drill, const Rung& rung, const Matter& matter) {
  const Tonight& tonight = matter.tonight;
  std::vector<Bar> bars;
  if (holds(tonight.bans, drill.id)) bars.push_back({"ban", drill.id, "a drill that is not banned tonight"});
  const int floor = std::max(drill.age_from, rung.age_from);
  if (tonight.age < floor || tonight.age > drill.age_to) {
    bars.push_back({"age", "the youngest is " + std::to_string(tonight.age),
                    std::to_string(floor) + " to " + std::to_string(drill.age_to)});
  }
  const std::vector<Stress> stresses = stresses_of(drill, rung);
  for (const SquadRestriction& restriction : tonight.restrictions) {
    if (!held_back(restriction, stresses)) continue;
    bars.push_back({"squad-restriction", "a stress the whole squad is held back from", "drills that spare it"});
    break;
  }
  std::vector<std::string> needs = drill.needs;
  needs.insert(needs.end(), rung.needs.begin(), rung.needs.end());
  for (const std::string& need : needs) {
    const Supply supply = supply_for(need, matter);
    if (!supply.enough) bars.push_back({"need", supply.there, supply.asked});
  }
  judge_place(drill, matter, bars);
  return bars;
}

std::vector<int> open_rungs(const Drill& drill, const Matter& matter) {
  std::vector<int> open;
  for (std::size_t r = 0; r < drill.rungs.size(); ++r) {
    if (bars_of(drill, drill.rungs[r], matter).empty()) open.push_back(static_cast<int>(r));
  }
  return open;
}

}  // namespace lanework::check
