// A squad's dated sessions as iCalendar (RFC 5545; the calendar's name also as RFC 7986 has it). Values in, text out.
//
// Times are floating local times (RFC 5545, 3.3.5, form 1): 18:00 is 18:00 on the club's own ground, also after the
// clocks change, and no time zone has to be stated that a club's folder does not have.
#pragma once

#include <map>
#include <string>
#include <utility>
#include <vector>

#include "core/club/calendar.h"

namespace lanework::club {

struct CalendarEvent {
  Date date;
  TimeOfDay start;
  Seconds length;
  std::string summary;
  std::string location;     // may be empty
  std::string description;  // lines end in '\n'; may be empty
};

struct SquadEvents {
  std::string club;   // name
  std::string squad;  // id
  std::string name;   // of the calendar: the squad's name
  std::vector<CalendarEvent> events;
};

// What is done at a session, a line a drill, by date and start; sessions that are not in it have no description.
using DrillLines = std::map<std::pair<Date, TimeOfDay>, std::vector<std::string>>;

// 'North end, lanes 1 and 2'; 'away'.
std::string place_of(const PlannedSlot& slot);

// One event a session; strip, lanes and drills, never a player.
SquadEvents events_of(const Club& club, const ClubSquad& squad, const Calendar& calendar, const DrillLines& drills);

// Stays the same for a squad's session of that date and start, however often the calendar is made anew.
std::string uid_of(const SquadEvents& squad, const CalendarEvent& event);

// stamp: when the calendar was made, in the form '20261120T080000Z'. Lines end in CRLF and have at most 75 octets; they
// are folded between characters. Control characters are dropped, broken UTF-8 becomes U+FFFD.
std::string to_icalendar(const SquadEvents& squad, const std::string& stamp);

}  // namespace lanework::club
