// A moment by the receiver's clock. A device's own clock is never one.
#pragma once

#include <compare>
#include <cstdint>

namespace lanework::care {

struct Moment {
  std::int64_t minutes = 0;  // since 1970-01-01T00:00Z
  constexpr auto operator<=>(const Moment&) const = default;
};

constexpr std::int64_t kMinutesAnHour = 60;
constexpr std::int64_t kHoursADay = 24;

constexpr Moment hours_after(Moment from, std::int64_t hours) { return {from.minutes + hours * kMinutesAnHour}; }

}  // namespace lanework::care
