// Clubs made of values: strips of so many lanes, squads with the week and matches a test asks for.
#pragma once

#include <string>
#include <vector>

#include "core/club/club.h"

namespace lanework::club::test {

inline Date day(const std::string& iso) { return *parse_iso_date(iso); }
inline TimeOfDay at(const std::string& clock) { return *parse_time_of_day(clock); }

// Monday 23 November 2026.
Date monday();

// A season around that Monday, the strips 'hall' (2 lanes, 10 m wide) and 'pitch' (4 lanes, 40 m wide), no squad, no
// kit of the club's.
Club empty_club();

session::WeekSlot slot(session::Weekday weekday, const std::string& start, int minutes, const std::string& strip = "",
                       int lanes = 0);
session::Match match(const std::string& date, const std::string& start = "", bool away = false);

// Adds a squad of ten twelve-year-olds, ids 'a-1' to 'a-10' for squad 'a', whose own strip is the hall.
ClubSquad& add_squad(Club& club, const std::string& id, std::vector<session::WeekSlot> week,
                     std::vector<session::Match> matches = {});

}  // namespace lanework::club::test
