// How many of the players are out with an injury on a day: those with a day lost (by the consensus' rule) among those
// on the books, day by day, and as means of weeks, months and the whole season.
//
// On the books are the players of the players' sheet from joining to leaving; where that is not kept, each squad's
// players by number. A player out with two injuries is out once. Injuries from before the period are not in the
// records, so that its first weeks look better than they were.
//
// A long injury is many days of one player, and squads differ: days are not independent. The limits come from leaving
// out each squad in turn, or with fewer than 'kFewSquads' each player (core/evidence/leave_one_out.h, on the log
// scale); how often they hold is simulated in tests/findings/prevalence_test.cpp.
#pragma once

#include <optional>
#include <vector>

#include "core/evidence/interval.h"
#include "core/records/season.h"

namespace lanework::findings {

// Fewer say too little of how squads differ: own judgement.
inline constexpr std::size_t kFewSquads = 6;

struct ShareOut {
  Date from;  // first day of the period, of the week, of the month
  std::int64_t days_out = 0;
  std::int64_t days_on_books = 0;
  // Empty where nobody was out, or nobody but those of one squad, or all squads alike.
  std::optional<evidence::Interval> limits;

  [[nodiscard]] double share() const { return static_cast<double>(days_out) / static_cast<double>(days_on_books); }
};

struct Prevalence {
  ShareOut season;
  std::vector<ShareOut> weeks;   // without limits; those with players on the books
  std::vector<ShareOut> months;  // likewise
  double players = 0;            // on the books, mean of days
  int players_out = 0;           // on some day
  bool listed = false;           // by the players' sheet
  bool by_squads = false;        // what was left out in turn: squads, else players
  int injuries_left_out = 0;     // with days lost, of nobody who is on the books that day
};

// Empty where nobody is on the books.
std::optional<Prevalence> prevalence(const records::Season& season, double level);

}  // namespace lanework::findings
