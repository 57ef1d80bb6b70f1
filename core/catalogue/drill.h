// A drill: one exercise as data. The grammar of its file is docs/formats/drill.md; the reader is
// read_drill.h. A value of this type is sound in itself: every list and number is within the limits
// stated here. References to other files (families, gaits, sources) are checked by check_catalogue.h.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/catalogue/words.h"
#include "core/figure/figure.h"

namespace lanework::catalogue {

// What a drill asks of one area of the body, graded; a restriction is matched against these.
struct Stress {
  BodyArea area;
  StressKind kind;
  int grade;  // 1 light, 2 moderate, 3 heavy
};

// One difficulty step, always shown by what changes.
struct Rung {
  std::string key;                       // 'knees-down'
  std::string change;                    // 'knees down': what people see
  int age_from = 0;                      // 0: the drill's own age floor holds
  std::vector<Stress> stress;            // replaces the drill's grade for the same area and kind; grade 0 removes it
  std::vector<Need> needs;               // besides the drill's own needs
  std::int64_t load_thousandths = 1000;  // factor on contacts and eccentric repetitions of this rung
  figure::Figure figure;                 // empty where the drill's own shows this rung too
};

enum class DoseKind { kReps, kSeconds, kPasses };

// One step of the dose range. amount is reps, seconds or passes of the lane; per side when the drill has
// sides, per partner in pairs.
struct DoseStep {
  int sets = 1;
  int amount = 1;
};

struct Dose {
  DoseKind kind = DoseKind::kReps;
  bool sides = false;           // done left and right: the work doubles, plus one side change a set
  Milliseconds tempo{};         // one repetition (kReps)
  Milliseconds rest{};          // between sets
  Milliseconds side_change{};   // from left to right
  std::vector<DoseStep> steps;  // 1 to 5, least work first
};

// How players run the lane; only for formation lane.
enum class LaneShape {
  kOutAndBack,  // out down the lane, back outside it, join the end of the file
  kOneWay,      // all gather at the far end; the next pass comes back
  kFacing       // two half files face each other and change ends
};

struct LaneWork {
  LaneShape shape = LaneShape::kOutAndBack;
  std::string out_gait;            // a key of gaits.toml
  int out_share_of_top_speed = 0;  // percent; used by gait 'run' only, 0 otherwise
  std::string back_gait;
  bool stops_at_cones = false;  // a held stop at each cone passed
  Milliseconds stop{};          // how long each stop is held
  Milliseconds turn{};          // at the far end
  Milliseconds release_gap{};   // between one player's start and the next
  Millimetres least_lane{};     // shorter lanes do not suit it
};

// How partners share the work; only for formation pairs.
struct PairWork {
  bool both_at_once = false;  // shoulder contacts, passes; otherwise one works while one holds
  Milliseconds swap{};        // changing roles
};

// What counts against a ceiling, per unit of dose (repetition, second, or metre of lane).
struct Loads {
  std::int64_t contacts_thousandths = 0;  // landings per unit
  ContactIntensity intensity = ContactIntensity::kLow;
  std::int64_t eccentric_thousandths = 0;  // eccentric hamstring repetitions per unit
  bool hard_running = false;               // the way out counts in hard-running metres
};

struct WatchFor {
  std::string fault;  // what is seen: 'hips sag'
  std::string cue;    // what is said: 'lift the belt'
};

// Source keys by what they vouch for; every key stands in sources.toml.
struct DrillSources {
  std::vector<std::string> dose;
  std::vector<std::string> timing;
  std::vector<std::string> loads;
  std::vector<std::string> stress;
  std::vector<std::string> technique;
};

struct Drill {
  std::string id;    // file name without ending: lower case, digits, hyphens
  std::string name;  // the trade's name
  Family family;
  Phase phase;
  Formation formation;
  int age_from;  // 8..19
  int age_to;
  std::string purpose;      // one line: what it is for, in words a parent understands
  std::string how;          // one or two lines: how it is set up and done
  std::vector<Rung> rungs;  // 2 to 4, easiest first
  Dose dose;
  LaneWork lane;
  PairWork pair;
  Milliseconds telling;     // to explain it to a squad that has never done it
  Millimetres space_width;  // clear space a player (or a pair) needs; spread and pairs
  Millimetres space_length;
  std::vector<Need> needs;
  std::vector<Surface> not_on;       // surfaces it is left out on
  std::vector<std::string> cues;     // at most 3, at most 8 words each
  std::vector<WatchFor> watch;       // 1 to 4
  std::vector<std::string> stop_if;  // 1 to 3 lines
  std::vector<Stress> stress;
  Loads loads;
  DrillSources sources;
  figure::Figure figure;  // of every rung that has none of its own
  std::string file;       // where it was read from, for messages
};

// The grades that hold on a rung: the drill's own, with the rung's replacements.
std::vector<Stress> stresses_on(const Drill& drill, const Rung& rung);
// What is drawn for a rung: its own figure or, where it has none, the drill's.
const figure::Figure& figure_on(const Drill& drill, const Rung& rung);
// Position of a rung by key, or -1.
int rung_index(const Drill& drill, const std::string& key);
// Position of the step with these sets and amount, or -1.
int dose_index(const Drill& drill, int sets, int amount);
// '2 x 20 s a side', '3 x 5', '2 passes': as people read it.
std::string dose_in_words(const Drill& drill, const DoseStep& step);

}  // namespace lanework::catalogue
