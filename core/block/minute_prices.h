// What a minute more or less on one day of the week is worth: a quick bound tells where to look, solving again with the
// sets as they are tells what it is worth.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/block/build_problem.h"
#include "core/block/solve.h"

namespace lanework::block {

// The sessions of one day of the week and start, all weeks of the block.
struct DayOfWeek {
  int weekday = 0;  // 0 Monday .. 6 Sunday
  TimeOfDay start;
  std::vector<std::size_t> sessions;  // of the problem
};

std::vector<DayOfWeek> days_of(const Outline& outline, const Built& built);

struct MinutePrice {
  DayOfWeek day;
  int minutes = 0;           // more, or where negative fewer
  Points before = 0;         // the block's worth with the sets as they are, worked out anew
  Points after = 0;          // the same with the minutes changed
  std::vector<int> credits;  // by family: quarter-credits gained over the whole block, negative where lost
};

struct MinutePrices {
  std::optional<MinutePrice> best_longer;   // the day where minutes buy most
  std::optional<MinutePrice> best_shorter;  // the day where they would be missed least
};

// minutes_more and minutes_fewer > 0. Empty where there is no session or no plan.
MinutePrices minute_prices(const Outline& outline, const Built& built, const Answer& answer, int minutes_more,
                           int minutes_fewer, const WeekEffort& effort);

// The problem with these sessions longer by so many minutes, or shorter.
Problem with_minutes(const Problem& problem, const std::vector<std::size_t>& sessions, int minutes);

}  // namespace lanework::block
