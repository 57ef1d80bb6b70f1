// What the checker knows of a request: its own values, read by its own reader from the documents as they
// stand (docs/formats). Nothing here is shared with the planner or the clock.
//
// Units in names: ms thousandths of a second, mm millimetres, thousandths of one. Words are kept as the files
// write them.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"

namespace lanework::check {

struct Step {
  int sets = 1;
  int amount = 1;
};

struct Stress {
  std::string area;
  std::string kind;
  int grade = 0;
};

struct Rung {
  std::string key;
  std::string words;
  int age_from = 0;
  std::vector<Stress> stress;
  std::vector<std::string> needs;
  std::int64_t load_thousandths = 1000;
};

struct Lane {
  std::string shape;
  std::string out;
  std::string back;
  int share_of_top_speed = 0;
  bool stops_at_cones = false;
  std::int64_t stop_ms = 0;
  std::int64_t turn_ms = 0;
  std::int64_t gap_ms = 0;
  std::int64_t least_mm = 0;
};

struct Drill {
  std::string id;
  std::string name;
  std::string family;
  std::string phase;
  std::string formation;
  int age_from = 0;
  int age_to = 0;
  std::int64_t telling_ms = 0;
  std::int64_t width_mm = 0;
  std::int64_t length_mm = 0;
  std::vector<std::string> needs;
  std::vector<std::string> not_on;
  std::vector<Rung> rungs;
  std::string dose_kind;
  bool sides = false;
  std::int64_t tempo_ms = 0;
  std::int64_t rest_ms = 0;
  std::int64_t side_change_ms = 0;
  std::vector<Step> steps;
  Lane lane;
  bool both_at_once = false;
  std::int64_t swap_ms = 0;
  std::vector<Stress> stress;
  std::int64_t contacts_thousandths = 0;
  std::string intensity;
  std::int64_t eccentric_thousandths = 0;
  bool hard_running = false;
};

struct Family {
  std::string key;
  std::string name;
  int rank = 0;
  std::vector<std::string> phases;
  bool required = true;
  std::int64_t weight = 1;
  std::int64_t session_seconds = 1;
  std::int64_t week_seconds = 1;
  int eccentric_from_age = 1000;          // from this age of the youngest on
  std::int64_t other_work_percent = 100;  // work without an eccentric load counts for this much
};

struct Gait {
  std::array<std::int64_t, 12> speed_mm_a_second{};  // at 8, 9, ... 19 years
  std::int64_t spread_thousandths = 0;
};

struct Band {
  int age_from = 0;
  int age_to = 0;
  std::int64_t jump_cap = 0;
  std::int64_t eccentric = 0;
  std::int64_t hard_running_metres = 0;
  std::int64_t jump_cap_week = 0;
  std::int64_t eccentric_week = 0;
  std::int64_t hard_running_week_metres = 0;
};

struct MatchDay {
  std::int64_t days = 0;
  std::int64_t contacts_percent = 100;
  std::int64_t eccentric_percent = 100;
  std::int64_t hard_running_percent = 100;
  bool new_drills = true;
};

struct Limits {
  std::int64_t most_new_drills = 0;
  std::int64_t warm_up_share_percent = 100;
  std::map<std::string, std::int64_t> contact_weight_thousandths;
  std::vector<Band> bands;
  std::vector<MatchDay> match;
};

struct RoutineLine {
  std::string drill;
  std::string rung;
  Step step;
};

struct Strip {
  std::int64_t lane_mm = 0;
  std::int64_t cone_spacing_mm = 0;
  int lanes = 1;
  std::int64_t width_mm = 0;
  std::int64_t length_mm = 0;
  std::vector<std::string> surface;
  bool wall = false;
  bool soft_ground = false;
  bool line = false;
};

// A restriction of the whole squad that holds tonight.
struct SquadRestriction {
  std::vector<std::string> areas;
  std::vector<std::string> kinds;
  int allowed_grade = 0;
  bool sits_out = false;
};

struct Pin {
  std::string drill;
  std::string rung;          // empty: open
  std::optional<Step> step;  // empty: open
};

// In quarters of a dose step.
struct ChangeWeights {
  std::int64_t dose_step = 4;
  std::int64_t rung_step = 8;
  std::int64_t left_out = 8;
  std::int64_t new_drill = 12;
};

struct Tonight {
  int start_minutes = 0;
  std::int64_t slot_seconds = 0;
  int turnout = 0;
  int late = 0;
  std::string no_session;  // why there is none
  int breaks = 0;
  std::int64_t break_seconds = 0;  // of each
  int age = 0;
  std::optional<std::int64_t> days_to_match;
  std::vector<SquadRestriction> restrictions;
  std::vector<std::string> bans;
  std::vector<Pin> pins;
  std::map<std::string, std::string> confirmed_rungs;  // by drill, of a week of a block
  bool free_composition = false;
  bool more_than_routine = false;
  int cones = 0;
  int balls = 0;
  int mats = 0;
  std::map<std::string, std::int64_t> taught;
  std::int64_t pace_thousandths = 1000;
  ChangeWeights weights;
};

// What may stand in no answer meant for a coach.
struct Secrets {
  std::vector<std::string> names;
  std::vector<std::string> ids;
  std::vector<std::int64_t> grams;
  std::vector<std::string> instructions;
};

struct Matter {
  std::map<std::string, Drill> drills;
  std::vector<Family> families;
  std::map<std::string, Gait> gaits;
  Limits limits;
  std::vector<RoutineLine> routine;
  Strip strip;
  Tonight tonight;
  Secrets secrets;
};

// Positions in lists; -1 where there is none.
int rung_position(const Drill& drill, const std::string& key);
int step_position(const Drill& drill, const Step& step);
int routine_position(const Matter& matter, const std::string& drill);
// start loosen build spring run, from 0; -1 for another word.
int phase_position(const std::string& phase);
const Family* find_family(const Matter& matter, const std::string& key);
bool holds(const std::vector<std::string>& list, const std::string& word);

}  // namespace lanework::check
