// The standing part of a squad file: its week, its matches, what holds beyond one evening. Grammar:
// docs/formats/club.md. One evening needs none of it; a block needs nothing else of a date.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/base/units.h"
#include "core/session/evening.h"

namespace lanework::session {

enum class Weekday { kMonday, kTuesday, kWednesday, kThursday, kFriday, kSaturday, kSunday };
Weekday weekday_of(Date date);
// 'Monday'.
std::string to_words(Weekday day);

// One wish of the squad's week.
struct WeekSlot {
  Weekday weekday = Weekday::kMonday;
  TimeOfDay start;
  Seconds length;     // 5 to 60 min
  std::string strip;  // id of one of the club's strips; empty: the squad file's own strip
  int lanes = 0;      // how many it uses; 0: all that the strip has
  Place place;
};

struct Match {
  Date date;
  std::optional<TimeOfDay> start;  // kick-off; with it the match has a warm-up slot of its own
  std::string opponent;            // may be empty
  std::optional<Seconds> length;   // of that warm-up; empty: as long as the match-day routine is written for
  bool away = false;               // not on the club's ground: takes no strip
  Place place;
};

// What the lead has fixed until further notice.
struct Locks {
  std::vector<Pin> pins;
  std::vector<std::string> bans;  // drill ids
};

// A rung that the lead has confirmed, harder or easier than the routine's, for the weeks of a block.
struct ConfirmedRung {
  std::string drill;
  std::string rung;
  Date from;  // holds from the first week on that begins on this day or later, until another is confirmed
};

struct Weekly {
  std::vector<WeekSlot> slots;                  // by weekday, then start
  std::vector<Match> matches;                   // by date
  std::vector<Date> away_days;                  // ascending: the squad is not there, its week's slots fall out
  std::string match_day_routine = "match-day";  // id, or a file name ending in .toml
  std::optional<int> expected_turnout;          // 2..40
  bool free_composition = false;                // the first set of a block may have any drills
  Locks locks;
  std::vector<ConfirmedRung> rungs;  // by drill, then date
};

}  // namespace lanework::session
