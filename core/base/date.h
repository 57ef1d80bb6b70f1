// A civil date, as days since 1970-01-01 (proleptic Gregorian calendar), and a clock time of day.
// No wall clock: 'today' is always passed in.
#pragma once

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace lanework {

struct Date {
  int days_since_epoch = 0;
  constexpr auto operator<=>(const Date&) const = default;
};

struct CivilDate {
  int year;
  int month;  // 1..12
  int day;    // 1..31
};

// Empty when there is no such day (30 February, month 13, year outside 1900..2200).
std::optional<Date> make_date(int year, int month, int day);
CivilDate civil(Date date);

// 'YYYY-MM-DD' only; everything else is read in people/.
std::optional<Date> parse_iso_date(std::string_view text);
std::string to_iso(Date date);
std::string to_words(Date date);      // 'Thursday 26 November 2026'
std::string weekday_name(Date date);  // 'Thursday'

constexpr int days_between(Date from, Date to) { return to.days_since_epoch - from.days_since_epoch; }

// Whole years from birth to the day.
int age_in_years(Date birth, Date on);

// Minutes after midnight, 0..1439.
struct TimeOfDay {
  int minutes = 0;
  constexpr auto operator<=>(const TimeOfDay&) const = default;
};
// '18:00', or '18:00:40', whose seconds are dropped. Nothing may follow: no fraction and no offset.
std::optional<TimeOfDay> parse_time_of_day(std::string_view text);
std::string to_text(TimeOfDay time);  // '18:22'; wraps past midnight

}  // namespace lanework
