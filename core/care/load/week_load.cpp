#include "core/care/load/week_load.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace lanework::care::load {

WeekLoad week_load(const std::array<double, kDaysAWeek>& days, Spread spread) {
  WeekLoad out;
  out.total = std::accumulate(days.begin(), days.end(), 0.0);
  out.daily_mean = out.total / kDaysAWeek;
  // Exactly alike: a sum of squares would leave a rounding error in the place of 0.
  if (std::all_of(days.begin(), days.end(), [&](double day) { return day == days.front(); })) return out;
  double squares = 0;
  for (const double day : days) squares += (day - out.daily_mean) * (day - out.daily_mean);
  out.deviation = std::sqrt(squares / (spread == Spread::kSample ? kDaysAWeek - 1 : kDaysAWeek));
  out.monotony = out.daily_mean / out.deviation;
  out.strain = out.total * *out.monotony;
  return out;
}

}  // namespace lanework::care::load
