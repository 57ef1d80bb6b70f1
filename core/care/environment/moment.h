// A minute of a day, by the clock on the club's wall. An evening that spans a change of the clocks is not provided for.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/date.h"

namespace lanework::care::environment {

struct Moment {
  std::int64_t minutes = 0;  // since 1970-01-01 00:00
  constexpr auto operator<=>(const Moment&) const = default;
};

Moment moment_of(Date date, TimeOfDay time);
Date date_of(Moment moment);
TimeOfDay time_of_day_of(Moment moment);
constexpr Moment plus_minutes(Moment moment, std::int64_t minutes) { return {moment.minutes + minutes}; }
constexpr std::int64_t minutes_between(Moment from, Moment to) { return to.minutes - from.minutes; }

// The moment with this time of day that lies nearest to another: at most 12 hours from it, before it where both are as
// near. So 23:50 told at 00:10 was ten minutes ago.
Moment nearest(TimeOfDay time, Moment to);

// '2026-07-14T17:40' or with seconds. Seconds are dropped, or where 'up' is set count as the next minute.
std::optional<Moment> parse_moment(std::string_view text, bool up = false);

// '18:36'; on another day than 'seen_from' '00:10 on Wednesday 15 July 2026'.
std::string to_words(Moment moment, Moment seen_from);
std::string to_iso(Moment moment);  // '2026-07-14T18:36'

}  // namespace lanework::care::environment
