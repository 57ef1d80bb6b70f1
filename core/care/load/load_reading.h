// One player's load over the weeks, as a description: totals, how alike the days are, weighted means. Never a risk,
// never a ratio of two means, never a zone. Prompts are words to think about, and unverified.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/care/load/read_sessions.h"
#include "core/care/load/week_load.h"

namespace lanework::care::load {

// From memory, unverified: hours a week in years of age, and one or two days of rest.
inline constexpr int kRestDaysAdvised = 2;

struct PlayerWeek {
  Date monday;
  bool whole = false;  // all seven days are known: neither before the player's first row nor after the day asked about
  int sessions = 0;
  int minutes = 0;
  int rest_days = 0;  // without a row; only of a whole week
  WeekLoad load;      // monotony and strain only of a whole week
  std::optional<int> age;
  bool more_hours_than_years = false;  // of a known age
  bool little_rest = false;            // fewer than kRestDaysAdvised days, of a whole week
};

struct WeightedMeans {
  double seed = 0;  // mean of the first seven days
  double short_mean = 0;
  double long_mean = 0;
  Date settled_from;  // before it both hang on the seed
  bool settled = false;
};

struct LoadReading {
  std::string player;
  Date first;  // the first row
  Date last;
  bool silent = false;  // no row in the seven days up to the day asked about: rest, or not entered
  std::vector<PlayerWeek> weeks;
  std::optional<WeightedMeans> means;  // of the day asked about; needs eight days
};

// sessions: of one player, by date, not empty, none after the day. Days without a row count as rest.
LoadReading read_load(const std::vector<SessionEffort>& sessions, Date day);

// By player, in the order of sessions.
std::vector<LoadReading> read_loads(const Sessions& sessions, Date day);

}  // namespace lanework::care::load
