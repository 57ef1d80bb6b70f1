#include "tests/check/evenings.h"

#include <algorithm>
#include <map>
#include <vector>

#include "tests/check/requests.h"

namespace lanework::check::test {
namespace {

using rc::gen::element;
using rc::gen::inRange;

struct Setting {
  std::string squad;
  std::string routine;
  int age_from;
  int age_to;
};

const std::vector<Setting>& settings() {
  static const std::vector<Setting> kSettings = {
      {"u10-wrens.toml", "first-steps", 8, 11},       {"u13-kestrels.toml", "early-teens", 11, 14},
      {"u13-kestrels.toml", "hall", 10, 16},          {"u13-kestrels.toml", "match-day", 11, 17},
      {"u13-kestrels.toml", "long-practice", 12, 16}, {"u16-merlins.toml", "mid-teens", 14, 16},
      {"u16-merlins.toml", "older", 15, 19},          {"u16-merlins.toml", "match-day", 12, 19}};
  return kSettings;
}

const Node& base_request(const Setting& setting) {
  static std::map<std::string, Node> made;
  const std::string key = setting.squad + setting.routine;
  const auto found = made.find(key);
  if (found != made.end()) return found->second;
  return made.emplace(key, demo_request(setting.squad, setting.routine)).first->second;
}

bool one_in(int many) { return *inRange(0, many) == 0; }

std::vector<std::string> drill_ids(const Node& request) {
  std::vector<std::string> ids;
  for (const Node& drill : request.find("catalogue")->find("drills")->items) ids.push_back(drill.find("id")->text);
  return ids;
}

std::vector<std::string> routine_ids(const Node& request) {
  std::vector<std::string> ids;
  for (const Node& line : request.find("routine")->find("drill")->items) ids.push_back(line.find("id")->text);
  return ids;
}

const Node& drill_node(const Node& request, const std::string& id) {
  const auto& drills = request.find("catalogue")->find("drills")->items;
  return *std::find_if(drills.begin(), drills.end(), [&](const Node& d) { return d.find("id")->text == id; });
}

class Variation {
 public:
  Variation(Evening& evening, const Setting& setting) : evening_(evening), setting_(setting) {}

  void apply() {
    slot();
    place();
    tonight();
    if (one_in(4)) restrict();
    if (one_in(4)) pin();
    if (one_in(4)) ban();
    if (one_in(4)) weights();
    taught();
  }

 private:
  Evening& evening_;
  const Setting& setting_;

  void set(const std::string& path, Node value) {
    evening_.story += path + " = " + to_json(value) + "\n";
    put(evening_.request, path, std::move(value));
  }

  void forget(const std::string& table, const std::string& key) {
    Node& squad = at(evening_.request, "squad");
    if (squad.find(table) != nullptr) erase(squad, table + "." + key);
  }

  void slot() {
    set("squad.slot.minutes", one_in(5) ? real(*inRange(20, 100) / 4.0 + 5) : number(*inRange(9, 36)));
    if (one_in(2)) {
      set("squad.slot.days_to_match", number(*inRange(0, 5)));
    } else {
      forget("slot", "days_to_match");
    }
    set("squad.age", number(*inRange(setting_.age_from, setting_.age_to + 1)));
    if (one_in(2)) set("squad.clock.pace", real(*inRange(800, 1400) / 1000.0));
  }

  void place() {
    set("strip.lane_length_metres", one_in(3) ? real(*inRange(50, 350) / 10.0) : number(*inRange(8, 25)));
    set("strip.cone_spacing_metres", real(*inRange(10, 50) / 10.0));
    set("strip.lanes", number(*inRange(1, 5)));
    set("strip.area_metres.width", number(*inRange(5, 30)));
    set("strip.area_metres.length", number(*inRange(5, 30)));
    for (const char* key : {"wall", "soft_ground", "line"})
      set(std::string("strip.") + key, Node::make_boolean(!one_in(3)));
    std::vector<std::string> surface;
    for (const char* word : {"wet", "hard", "uneven", "dark"}) {
      if (one_in(8)) surface.emplace_back(word);
    }
    set("strip.surface", texts(surface));
    set("squad.kit.cones", number(one_in(6) ? *inRange(0, 6) : 30));
    set("squad.kit.balls", number(*inRange(0, 30)));
    set("squad.kit.mats", number(one_in(3) ? 40 : 0));
  }

  void tonight() {
    const int turnout = *inRange(2, 31);
    if (one_in(4)) {
      forget("tonight", "turnout");
      set("squad.tonight.late", number(*inRange(0, 3)));
    } else {
      set("squad.tonight.turnout", number(turnout));
      set("squad.tonight.late", number(one_in(2) ? 0 : *inRange(0, std::min(turnout, 6))));
    }
    if (one_in(4)) {
      set("squad.tonight.breaks", number(*inRange(1, 4)));
      set("squad.tonight.break_minutes", real(*inRange(2, 9) / 2.0));
    }
    if (one_in(8)) set("squad.tonight.free_composition", yes());
    if (one_in(4)) set("squad.tonight.more_than_routine", yes());
  }

  void restrict() {
    static const std::vector<std::string> kAreas = {"knee",     "ankle",      "low-back",
                                                    "shoulder", "back-thigh", "hip-and-groin"};
    static const std::vector<std::string> kKinds = {"impact", "load", "twist", "speed", "stretch", "pressure"};
    Node row = Node::make_table();
    row.set("squad", text(evening_.request.find("squad")->find("name")->text));
    if (!one_in(3))
      row.set("areas",
              texts({*element(kAreas.at(0), kAreas.at(1), kAreas.at(2), kAreas.at(3), kAreas.at(4), kAreas.at(5))}));
    row.set("kinds",
            texts({*element(kKinds.at(0), kKinds.at(1), kKinds.at(2), kKinds.at(3), kKinds.at(4), kKinds.at(5))}));
    row.set("allowed", text(*element(std::string("none"), std::string("light"), std::string("moderate"))));
    if (one_in(3)) row.set("until", text(*element(std::string("2026-11-25"), std::string("2026-11-26"))));
    evening_.story += "restriction " + to_json(row) + "\n";
    at(evening_.request, "restrictions.restriction").items.push_back(row);
  }

  std::string any_drill() {
    const std::vector<std::string> ids = one_in(2) ? routine_ids(evening_.request) : drill_ids(evening_.request);
    return ids.at(static_cast<std::size_t>(*inRange(0, static_cast<int>(ids.size()))));
  }

  void pin() {
    Node pins = Node::make_array();
    std::vector<std::string> taken;
    const int count = *inRange(1, 3);
    for (int i = 0; i < count; ++i) {
      const std::string id = any_drill();
      if (std::find(taken.begin(), taken.end(), id) != taken.end()) continue;
      taken.push_back(id);
      const Node& drill = drill_node(evening_.request, id);
      Node pin = Node::make_table();
      pin.set("drill", text(id));
      if (one_in(2)) {
        const auto& rungs = drill.find("rung")->items;
        const int rung = one_in(2) ? 0 : *inRange(0, static_cast<int>(rungs.size()));
        pin.set("rung", *rungs.at(static_cast<std::size_t>(rung)).find("key"));
      }
      if (one_in(2)) {
        const auto& steps = drill.find("dose")->find("steps")->items;
        const Node& step = steps.at(static_cast<std::size_t>(*inRange(0, static_cast<int>(steps.size()))));
        pin.set("sets", *step.find("sets"));
        pin.set("amount", *step.find("amount"));
      }
      pins.items.push_back(pin);
    }
    set("squad.tonight.pins", pins);
  }

  void ban() {
    std::vector<std::string> bans;
    for (int i = *inRange(1, 4); i > 0; --i) bans.push_back(any_drill());
    set("squad.tonight.bans", texts(bans));
  }

  void weights() {
    set("squad.weights.dose_step", real(*inRange(1, 16) / 4.0));
    set("squad.weights.rung_step", real(*inRange(1, 16) / 4.0));
    set("squad.weights.left_out", real(*inRange(1, 16) / 4.0));
    set("squad.weights.new_drill", real(*inRange(1, 16) / 4.0));
  }

  void taught() {
    const int kind = *inRange(0, 3);
    if (kind == 0) set("squad.taught", Node::make_table());
    if (kind != 1) return;
    for (int i = 0; i < 8; ++i) set("squad.taught." + any_drill(), number(*inRange(0, 30)));
  }
};

}  // namespace

rc::Gen<Evening> evenings() {
  // At full size from the first case on: a range drawn at a small size gives its lower end only.
  return rc::gen::noShrink(
      rc::gen::resize(rc::kNominalSize, rc::gen::exec([] {
                        const Setting setting =
                            settings().at(static_cast<std::size_t>(*inRange(0, static_cast<int>(settings().size()))));
                        Evening evening{base_request(setting), setting.squad + ", " + setting.routine + "\n"};
                        Variation(evening, setting).apply();
                        return evening;
                      })));
}

}  // namespace lanework::check::test
