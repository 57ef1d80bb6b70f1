// A squad's weeks as dated sessions. Nothing is dropped in silence: what falls out stands in Calendar::missed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/base/units.h"
#include "core/club/club.h"
#include "core/session/evening.h"
#include "core/session/strip.h"

namespace lanework::club {

// Before kick-off the warm-up of a match ends this long (common practice: a word, a drink, the line-up).
inline constexpr int kMinutesBeforeKickOff = 5;

// One session to plan.
struct PlannedSlot {
  Date date;
  TimeOfDay start;
  Seconds length;
  std::string strip_id;  // of Settings::strips
  session::Strip strip;  // its lanes are those this squad has, its width the same share of the whole strip's
  std::vector<int>
      lanes;         // which of the strip's lanes, counted from 1, ascending; empty before allocation and elsewhere
  session::Kit kit;  // what this squad has for it
  std::optional<int> days_to_match;  // to the squad's next match on or after the date; 0 today; empty: none is known
  bool match_day = false;            // the warm-up before a match: days_to_match is 0, the match-day routine is used
  bool elsewhere = false;            // an away match: the strip is a stand-in and takes no lanes
};

enum class Missed {
  kHoliday,
  kAwayDay,
  kOutOfSeason,
  kMatchTakesIts,  // the match of that day has a warm-up slot of its own
  kNoLane          // allocation: every lane was taken
};

struct MissedSlot {
  Date date;
  TimeOfDay start;
  Missed reason = Missed::kHoliday;
  std::string why;  // 'Autumn break', 'the squad is away', ...
  std::string of;   // the holiday's name, or the strip's id where there is no lane; else empty
};

struct Calendar {
  std::vector<PlannedSlot> slots;  // by date, then start
  std::vector<MissedSlot> missed;  // by date, then start
};

// The squad's wishes from a Monday for a number of weeks; strips and kit as wished, not yet shared with other squads
// (allocation.h does that). Holidays, away days and days outside the season take the week's slots out; a match of that
// day keeps its warm-up. A weekly slot on the day of a match without a kick-off time is that match's warm-up.
// REQUIRES: monday is one, weeks > 0.
Calendar expand(const Club& club, const ClubSquad& squad, Date monday, int weeks);

// The squad as its file would state that slot as one evening: date, slot, kit and locks of that day. late, away, pins
// and bans of [tonight] belong to another evening and are left out.
session::Squad squad_on(const Club& club, const ClubSquad& squad, const PlannedSlot& slot);

// Everything clock and planner need for one slot, from the squad's file and the club's: turnout, age, restrictions of
// the whole squad, locks of that day.
// Faults: nobody there, more players than 40, no age to go by.
Result<session::Evening> evening_of(const Club& club, const ClubSquad& squad, const PlannedSlot& slot);

// The routine of the slot: the match-day routine on a match day, else the house routine.
const catalogue::Routine& routine_of(const ClubSquad& squad, const PlannedSlot& slot);

}  // namespace lanework::club
