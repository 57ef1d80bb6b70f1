#include "app/serve/http/http_date.h"

#include <array>
#include <chrono>
#include <cstdio>

namespace lanework::serve {

std::string http_date(std::int64_t seconds) {
  static constexpr std::array<const char*, 7> kDays = {"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  static constexpr std::array<const char*, 12> kMonths = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  const std::chrono::sys_seconds moment{std::chrono::seconds(seconds)};
  const auto midnight = std::chrono::floor<std::chrono::days>(moment);
  const std::chrono::year_month_day day(midnight);
  const std::chrono::hh_mm_ss time(moment - midnight);
  std::array<char, 64> out{};
  std::snprintf(out.data(), out.size(), "%s, %02u %s %04d %02d:%02d:%02d GMT",
                kDays.at(std::chrono::weekday(midnight).c_encoding()), static_cast<unsigned>(day.day()),
                kMonths.at(static_cast<unsigned>(day.month()) - 1), static_cast<int>(day.year()),
                static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()),
                static_cast<int>(time.seconds().count()));
  return out.data();
}

}  // namespace lanework::serve
