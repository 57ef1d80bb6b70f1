// The calendar that a coach's phone follows by a link: place, time, squad, and whether a match comes after. No drills,
// no opponents, nobody: it is read without a session, and as a rule by a calendar service's machine.
//
// What was said of an evening before is remembered, so that a changed one takes the place of the older one (the same
// UID, a higher SEQUENCE) and one that was taken out is called off (STATUS:CANCELLED) until its day is over. Values in,
// text out. docs/model/calendar_link.md.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/document.h"
#include "core/club/calendar.h"

namespace lanework::club {

inline constexpr int kDaysEveningsStay = 14;  // after they are over (own judgement)

struct FollowedEvening {
  Date date;
  int number = 1;  // of the day's evenings, by start: with the date it is the same evening, also when its time is moved
  TimeOfDay start;
  int minutes = 0;
  bool before_match = false;
  std::string place;
  std::int64_t revision = 0;  // SEQUENCE of RFC 5545
  std::int64_t changed = 0;   // seconds since 1970: when it came to be so
  bool called_off = false;
  bool operator==(const FollowedEvening&) const = default;
};

// By date and number, as nobody was told of them yet.
std::vector<FollowedEvening> followed_evenings(const Calendar& calendar);

// What to say now. before: what was said last; planned: of followed_evenings; plan_from: the plan's first day, it says
// nothing of days before it. An evening that did not change is what it was, also its moment.
std::vector<FollowedEvening> said_now(const std::vector<FollowedEvening>& before,
                                      const std::vector<FollowedEvening>& planned, Date plan_from, Date today,
                                      std::int64_t now_seconds);

struct FollowedSquad {
  std::string club;   // name
  std::string squad;  // id
  std::string name;   // as people say it
};

// Floating local times, CRLF, folded (icalendar.h). The same evenings give the same text.
std::string to_icalendar(const FollowedSquad& squad, const std::vector<FollowedEvening>& evenings);

// To keep what was said.
std::string to_kept_text(const std::vector<FollowedEvening>& evenings);
// Of what cannot be read nothing was said.
std::vector<FollowedEvening> read_kept_text(std::string_view text);

}  // namespace lanework::club
