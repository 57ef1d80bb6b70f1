// Strips and kit shared by squads: who has which lanes when, and what is short. docs/formats/club.md says the order in
// which wishes are served.
#pragma once

#include <string>
#include <vector>

#include "core/club/calendar.h"

namespace lanework::club {

enum class Short { kLanes, kCones, kBalls, kMats };

// A wish that could not be served in full. What repeats week by week is one conflict with many dates.
struct Conflict {
  Short what = Short::kLanes;
  std::string strip_id;             // where lanes are short
  std::string squad;                // id of the one that goes short
  std::vector<std::string> others;  // ids of those who hold what it lacks, ascending
  std::vector<Date> dates;          // ascending, all of one weekday
  TimeOfDay start;
  int wished = 0;
  int has = 0;
  std::string cure;  // the smallest change that ends it: 'start 10 min later (18:20)'
};

struct Allocation {
  std::vector<Calendar> calendars;  // one a squad, in the order of Club::squads; lanes and kit as served
  std::vector<Conflict> conflicts;  // by first date, start, squad
};

// Earlier starts are served first; of equal ones those in Settings::served_first, then by squad id. A wish gets what is
// free, neighbouring lanes where there are enough of them; a slot without any lane becomes a missed one. The same club
// gives the same allocation. REQUIRES: monday is one, weeks > 0.
Allocation allocate(const Club& club, Date monday, int weeks);

// 'Tuesday 18:00, 6 weeks from 2026-11-24: u14-larks wants 2 lanes of north-end and has 1 (u13-kestrels is there)'.
std::string to_words(const Conflict& conflict);

}  // namespace lanework::club
