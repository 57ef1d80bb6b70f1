// One evening: everything the clock and the planner need to know, apart from the catalogue and the
// routine. Built by the door from squad file, strip, roster and flags; a value of this type is sound.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/units.h"
#include "core/people/player.h"
#include "core/session/strip.h"

namespace lanework::session {

// A demand on the plan that names one drill.
struct Pin {
  std::string drill;  // id
  std::string rung;   // key; empty leaves it open
  int sets = 0;       // 0 leaves the dose open
  int amount = 0;
};

// What the squad has done before, by drill id: how often, and at most that rung and dose have been taught.
struct Exposure {
  int times = 0;
};

// What a departure from the routine weighs, in quarters of a dose step (own judgement, editable in the
// squad file): a dose step 1, a rung step 2, a drill left out 2, a drill not of the routine 3.
struct ChangeWeights {
  int dose_step = 4;
  int rung_step = 8;
  int left_out = 8;
  int new_drill = 12;
};

// Rests put between the drills, such as drinking in the shade on a hot evening.
struct Breaks {
  int count = 0;    // 0..6
  Seconds each{};   // 1 to 20 min; 0 where there are none
  std::string why;  // 'heat'; in the coach's words, may be empty
  [[nodiscard]] Seconds total() const { return Seconds(count * each.count); }
};

struct Evening {
  std::string club;
  std::string squad;  // name
  Date date;
  TimeOfDay start;
  Seconds slot;                      // minutes available, in seconds; 5 to 60 min
  int turnout = 0;                   // players present and taking part, 2..40
  int late = 0;                      // of these, how many come after the first drill
  int age = 0;                       // the squad's age for ceilings and the youngest's floor: the youngest present
  std::optional<int> days_to_match;  // 0 today; empty: no match in sight
  Breaks breaks;                     // taken off the slot
  std::string no_session;            // why there is none tonight, such as thunder; empty: there may be one
  std::vector<std::string> remarks;  // what is different tonight, in the coach's words: weather, late reports
  Strip strip;
  Kit kit;
  std::vector<people::Restriction> restrictions;  // whole-squad ones only
  std::vector<Pin> pins;
  std::vector<std::string> bans;              // drill ids
  bool free_composition = false;              // the whole catalogue may enter
  bool more_than_routine = false;             // larger doses than the routine's may be given
  std::map<std::string, Exposure> exposures;  // by drill id
  int pace_thousandths = 1000;                // learned pace factor of the squad: above 1000 is slower
  ChangeWeights weights;
  std::uint64_t seed = 1;  // of the simulated spread
};

}  // namespace lanework::session
