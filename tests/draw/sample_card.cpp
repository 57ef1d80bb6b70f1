#include "tests/draw/sample_card.h"

#include <array>

#include <fstream>
#include <iterator>
#include <map>

#include "app/draw/card_words.h"
#include "core/base/document.h"

namespace lanework::draw {
namespace {

// The figure of a shipped drill; kept for the life of the program.
const figure::Figure* shipped_figure(const std::string& id) {
  static std::map<std::string, figure::Figure> figures;
  const auto found = figures.find(id);
  if (found != figures.end()) return &found->second;
  const std::string file = std::string(LANEWORK_SOURCE_DIR) + "/catalogue/drills/" + id + ".toml";
  std::ifstream stream(file, std::ios::binary);
  const std::string text((std::istreambuf_iterator<char>(stream)), {});
  const auto document = parse_toml(file, text);
  if (!document) return nullptr;
  Faults faults;
  TableReader root(file, &document.value().root, "", faults);
  return &figures.emplace(id, figure::read_figure(root.table("figure"))).first->second;
}

DrillMatter drill(const char* name, const char* rung, const char* dose, Formation formation, const char* phase,
                  int telling, int takes) {
  DrillMatter matter;
  matter.name = name;
  matter.rung_words = rung;
  matter.dose_words = dose;
  matter.formation = formation;
  matter.phase = phase;
  matter.telling_seconds = telling;
  matter.takes_seconds = takes;
  return matter;
}

std::vector<DrillMatter> all_drills() {
  using enum Formation;
  std::vector<DrillMatter> drills = {
      drill("Easy laps of the lane", "steady", "2 passes", kLane, "start", 5, 75),
      drill("Side shuffle, face in and out", "change at half way", "2 passes", kLane, "start", 8, 80),
      drill("Walking thigh stretch", "held 2 s", "1 pass", kLane, "loosen", 8, 85),
      drill("Lunge, turn and reach", "slow, no weight on hands", "1 pass", kLane, "loosen", 15, 95),
      drill("Side plank", "knees down", "1 \u00D7 20 s a side", kSpread, "build", 10, 66),
      drill("Two-leg bridge", "2 s at the top", "1 \u00D7 8", kSpread, "build", 8, 52),
      drill("Partner-held hamstring lower", "hands catch early", "1 \u00D7 4 each", kPairs, "build", 20, 120),
      drill("One-leg stand with ball pass", "eyes on the ball", "2 \u00D7 10 s a side", kPairs, "build", 10, 70),
      drill("Squat to a stop", "to a right angle", "1 \u00D7 10", kSpread, "build", 6, 50),
      drill("Jump and stick", "both feet, quiet landing", "1 \u00D7 6", kSpread, "spring", 10, 48),
      drill("Shoulder bump and land", "light contact", "1 \u00D7 5 each", kPairs, "spring", 12, 70),
      drill("Bounds down the lane", "half the lane", "2 passes", kLane, "run", 8, 75),
      drill("Run tall, jog back", "about 85 % of top speed", "2 passes", kLane, "run", 8, 70),
      drill("Plant and cut at the cone", "one cut each way", "2 passes", kLane, "run", 12, 85)};
  const std::vector<std::vector<std::string>> cues = {
      {"Tall and loose", "Quiet feet"},
      {"Stay low, hips level", "Push off the back foot", "Look ahead"},
      {"Heel to seat, knee points down", "Stand tall on the other leg"},
      {"Long step, front knee over the toes", "Turn towards the front knee", "Reach past the heel"},
      {"Elbow under the shoulder", "Lift the belt", "Long line from ear to knee"},
      {"Press through the heels", "Lift until hips are straight"},
      {"Hips stay open, chest proud", "Slow down as long as you can", "Catch with both hands"},
      {"Soft knee over the foot", "Hips level", "Pass chest high"},
      {"Sit back and down", "Knees over the toes", "Chest up"},
      {"Land like a cat", "Knees over the toes", "Hold it for two counts"},
      {"Jump up, not across", "Meet shoulder to shoulder", "Land on both feet"},
      {"Drive the knee", "Float, then land soft"},
      {"Tall hips, fast feet", "Lean from the ankles"},
      {"Short steps before the cone", "Plant outside the hip", "Push off and go"}};
  const std::array<WatchForMatter, 4> faults = {{{"knee falls in", "knee over the toes"},
                                                 {"hips sag", "lift the belt"},
                                                 {"lands loud and stiff", "land like a cat"},
                                                 {"trunk tips sideways", "belt buckle level"}}};
  const std::vector<std::string> ids = {
      "easy-laps",  "side-shuffle",   "walking-thigh-stretch",    "lunge-rotate-reach",
      "side-plank", "bridge",         "kneeling-hamstring-lower", "one-leg-ball-throw",
      "squat",      "jump-and-stick", "shoulder-contact-jump",    "bounding",
      "strides",    "plant-and-cut"};
  for (std::size_t at = 0; at < drills.size(); ++at) {
    drills[at].figure = shipped_figure(ids[at]);
    drills[at].cues = cues[at];
    drills[at].watch = {faults[at % 4]};
    if (at % 3 == 1) drills[at].watch.push_back(faults[(at + 1) % 4]);
  }
  drills[7].needs = {"one ball a pair"};
  drills[4].mark = {"easier tonight", "two days before a match"};
  drills[9].mark = {"new tonight", "takes the place of the wall jump: no wall here"};
  return drills;
}

}  // namespace

CardMatter sample_card(int drills) {
  CardMatter card;
  card.club = "Quillmere Juniors";
  card.squad = "Under-13 Kestrels";
  card.date_words = "Thursday 26 November 2026";
  card.date_iso = "2026-11-26";
  card.start_minute_of_day = 18 * 60 + 4;
  card.turnout = 14;
  card.gathering_seconds = 20;
  card.drills = all_drills();
  card.drills.resize(static_cast<std::size_t>(drills));
  int now = card.gathering_seconds;
  for (std::size_t at = 0; at < card.drills.size(); ++at) {
    DrillMatter& drill = card.drills[at];
    drill.change_seconds = at > 0 && card.drills[at - 1].formation != drill.formation ? 18 : 0;
    drill.starts_second = now + drill.change_seconds;
    now = drill.starts_second + drill.takes_seconds;
  }
  card.planned_seconds = now;
  card.nine_in_ten_seconds = now + 80;
  card.slot_seconds = (now + 80 + 119) / 60 * 60;
  card.finish = words::clock_time(card.start_minute_of_day, now + 59);
  card.finish_nine_in_ten = words::clock_time(card.start_minute_of_day, now + 80 + 59);
  card.saving = "a third lane saves 1 min 10 s";
  card.strip = {"North end of pitch 2", "grass, wet", 15000, 5000, 2, 3000, 15000, 20000, 2000, 750, "an adult"};
  card.changes = {"Side plank: 1 \u00D7 20 s instead of 2 \u00D7 20 s, two days before a match",
                  "Jump and stick instead of the wall jump: no wall here",
                  "Curved runs left out: the slot is 3 min shorter"};
  card.not_covered = {"Hip and groin: 1 min 20 s more would buy the adductor squeeze"};
  card.stop_always = {"A knock to the head, or anyone dazed or sick: out, and stays out tonight",
                      "Sharp or new pain, a limp, a joint that gives way or swells",
                      "Thunder heard or lightning seen: everybody inside",
                      "Short of breath, chest pain, collapse: call for help at once"};
  card.stop_drill = {"Pain at the back of the thigh or knee", "Pain in the shoulder or back",
                     "Pain in the knee, shin or heel", "Pinching at the front of the hip",
                     "The ground gives, anyone slips"};
  card.danger_signs = {
      {"Call emergency services", "collapse, fainting or a fit; chest pain; breathing that does not settle"},
      {"A clinician before playing on", "swelling; cannot take four steps on it; pain that wakes at night"}};
  card.action_plan.note = "Millrace ground. Check it on the night.";
  card.action_plan.lacks = "Plan incomplete: no defibrillator named.";
  card.action_plan.address = "Millrace Lane 9, Quillmere";
  card.action_plan.calls = "the second coach";
  card.restrictions_as_known = "Sunday 20:10";
  card.session_id = "qj-u13k-20261126-1804";
  return card;
}

SlipMatter sample_slip() {
  SlipMatter slip;
  slip.club = "Quillmere Juniors";
  slip.squad = "Under-13 Kestrels";
  slip.date_words = "Thursday 26 November 2026";
  slip.date_iso = "2026-11-26";
  slip.start_minute_of_day = 18 * 60 + 4;
  slip.restrictions_as_known = "Sunday 20:10";
  slip.partners = {
      {{"Ines Marlow", "Tova Brandt"}, ""},     {{"Kit Osei", "Remy Vale"}, ""},
      {{"Pia Halloran", "Suki Lund"}, ""},      {{"Maren Abara", "Jo Wexley"}, "wall version"},
      {{"Noor Castell", "Ottilie Grange"}, ""}, {{"Bea Quill", "Fern Adeyemi", "Lin Tarrow"}, "three take turns"}};
  slip.swaps = {{"Maren Abara",
                 "no jumping until 3 Dec",
                 {"Instead of Jump and stick: does Side plank, knees down, 2 \u00D7 15 s a side",
                  "Instead of Shoulder bump and land: holds the ball for the others"}}};
  slip.regrouped = {{"Partner-held hamstring lower", {{{"Ines Marlow", "Kit Osei", "Remy Vale"}, ""}}}};
  slip.sits_out = {{"Wren Solberg", "sits out, see a clinician", {}}};
  slip.notes = {"Odd number tonight: one group of three."};
  slip.session_id = "qj-u13k-20261126-1804";
  return slip;
}

}  // namespace lanework::draw
