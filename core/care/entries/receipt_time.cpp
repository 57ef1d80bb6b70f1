#include "core/care/entries/receipt_time.h"

namespace lanework::care {
namespace {

constexpr std::int64_t kMinutesADay = 24 * 60;

std::int64_t local_minutes(ReceiptTime time) { return time.moment.minutes + time.offset_minutes; }

std::int64_t floored_days(std::int64_t minutes) {
  return minutes >= 0 ? minutes / kMinutesADay : -((-minutes + kMinutesADay - 1) / kMinutesADay);
}

std::optional<int> offset_of(std::string_view text) {
  if (text == "Z") return 0;
  if (text.size() != 6 || (text[0] != '+' && text[0] != '-')) return {};
  const std::optional<TimeOfDay> apart = parse_time_of_day(text.substr(1));
  constexpr int kMostOffset = 14 * 60;
  if (!apart || apart->minutes > kMostOffset) return {};
  return text[0] == '-' ? -apart->minutes : apart->minutes;
}

}  // namespace

std::optional<ReceiptTime> parse_receipt_time(std::string_view text) {
  constexpr std::size_t kDate = 10;
  constexpr std::size_t kToMinutes = 16;
  if (text.size() <= kToMinutes || text[kDate] != 'T') return {};
  const std::optional<Date> day = parse_iso_date(text.substr(0, kDate));
  const std::optional<TimeOfDay> time = parse_time_of_day(text.substr(kDate + 1, 5));
  std::string_view rest = text.substr(kToMinutes);
  const auto digit = [](char c) { return c >= '0' && c <= '9'; };
  if (rest.size() > 3 && rest[0] == ':') {
    if (rest[1] > '5' || !digit(rest[1]) || !digit(rest[2])) return {};
    rest = rest.substr(3);
  }
  const std::optional<int> offset = offset_of(rest);
  if (!day || !time || !offset) return {};
  return ReceiptTime{{day->days_since_epoch * kMinutesADay + time->minutes - *offset}, *offset};
}

Date local_day(ReceiptTime time) { return Date{static_cast<int>(floored_days(local_minutes(time)))}; }

TimeOfDay local_time(ReceiptTime time) {
  const std::int64_t minutes = local_minutes(time);
  return TimeOfDay{static_cast<int>(minutes - floored_days(minutes) * kMinutesADay)};
}

ReceiptTime at_same_offset(Moment moment, ReceiptTime like) { return {moment, like.offset_minutes}; }

std::string to_known_words(ReceiptTime time) { return weekday_name(local_day(time)) + " " + to_text(local_time(time)); }

std::string to_day_words(ReceiptTime time) { return to_words(local_day(time)) + " " + to_text(local_time(time)); }

}  // namespace lanework::care
