// Watching a season week by week, where the hours differ from week to week: the sum of cusum.h with a reference for
// each week, in proportion to what was to be expected of it.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace lanework::evidence {

struct WatchPlan {
  double usual_rate = 0;    // events an hour, > 0
  double changed_rate = 0;  // that the watch is to see soon; above the usual one to watch for more, below for fewer
  int parts = 10;           // of one event; sums move on this lattice
  int decision = 1;         // parts; the alarm is given at or above it
};

struct WatchedWeek {
  std::int64_t events = 0;
  double hours = 0;     // 0: nothing happens to the sum
  double expected = 0;  // at the usual rate
  double sum = 0;       // in events, after the week
  bool alarm = false;   // then the sum starts anew
};

struct Counted {
  std::int64_t events = 0;
  double hours = 0;
};
std::vector<WatchedWeek> watch_weeks(const WatchPlan& plan, std::span<const Counted> weeks);

// Alarms to be expected in weeks of these hours where the rate is 'true_rate' throughout, exactly.
double alarms_expected(const WatchPlan& plan, std::span<const double> hours, double true_rate);

// The least decision limit with which at most so many alarms are to be expected at the usual rate, up to 'most' parts;
// most + 1 where none does.
int decision_for_alarms(WatchPlan plan, std::span<const double> hours, double most_alarms, int most);

}  // namespace lanework::evidence
