#include "core/base/date.h"

#include <array>
#include <cstdio>

namespace lanework {
namespace {

constexpr bool is_leap(int year) { return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0; }

constexpr int days_in_month(int year, int month) {
  constexpr std::array<int, 12> kDays = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  return month == 2 && is_leap(year) ? 29 : kDays.at(static_cast<std::size_t>(month - 1));
}

// Days from 1970-01-01, counting eras of 400 years that start on 1 March.
constexpr int days_from_civil(int year, int month, int day) {
  const int y = month <= 2 ? year - 1 : year;
  const int era = (y >= 0 ? y : y - 399) / 400;
  const int year_of_era = y - era * 400;
  const int day_of_year = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
  const int day_of_era = year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
  return era * 146097 + day_of_era - 719468;
}

bool all_digits(std::string_view text) {
  for (const char c : text) {
    if (c < '0' || c > '9') return false;
  }
  return !text.empty();
}

int number(std::string_view digits) {
  int n = 0;
  for (const char c : digits) n = n * 10 + (c - '0');
  return n;
}

}  // namespace

std::optional<Date> make_date(int year, int month, int day) {
  if (year < 1900 || year > 2200 || month < 1 || month > 12 || day < 1 || day > days_in_month(year, month)) return {};
  return Date{days_from_civil(year, month, day)};
}

CivilDate civil(Date date) {
  const int z = date.days_since_epoch + 719468;
  const int era = (z >= 0 ? z : z - 146096) / 146097;
  const int day_of_era = z - era * 146097;
  const int year_of_era = (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
  const int day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
  const int shifted_month = (5 * day_of_year + 2) / 153;
  const int month = shifted_month + (shifted_month < 10 ? 3 : -9);
  return {year_of_era + era * 400 + (month <= 2 ? 1 : 0), month, day_of_year - (153 * shifted_month + 2) / 5 + 1};
}

std::optional<Date> parse_iso_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return {};
  const std::string_view year = text.substr(0, 4);
  const std::string_view month = text.substr(5, 2);
  const std::string_view day = text.substr(8, 2);
  if (!all_digits(year) || !all_digits(month) || !all_digits(day)) return {};
  return make_date(number(year), number(month), number(day));
}

std::string to_iso(Date date) {
  const CivilDate c = civil(date);
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02d-%02d", c.year, c.month, c.day);
  return text.data();
}

int age_in_years(Date birth, Date on) {
  const CivilDate b = civil(birth);
  const CivilDate n = civil(on);
  const bool birthday_passed = n.month > b.month || (n.month == b.month && n.day >= b.day);
  return n.year - b.year - (birthday_passed ? 0 : 1);
}

std::optional<TimeOfDay> parse_time_of_day(std::string_view text) {
  if (text.size() == 8 && text[5] == ':') {  // 18:00:00 as TOML writes it
    const std::string_view seconds = text.substr(6);
    if (!all_digits(seconds) || number(seconds) > 59) return {};
    text = text.substr(0, 5);
  }
  if (text.size() != 5 || text[2] != ':') return {};
  if (!all_digits(text.substr(0, 2)) || !all_digits(text.substr(3, 2))) return {};
  const int hours = number(text.substr(0, 2));
  const int minutes = number(text.substr(3, 2));
  if (hours > 23 || minutes > 59) return {};
  return TimeOfDay{hours * 60 + minutes};
}

std::string to_text(TimeOfDay time) {
  const int minutes = ((time.minutes % 1440) + 1440) % 1440;
  std::array<char, 16> text{};
  std::snprintf(text.data(), text.size(), "%02d:%02d", minutes / 60, minutes % 60);
  return text.data();
}

}  // namespace lanework
