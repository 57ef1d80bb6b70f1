#include "core/care/environment/moment.h"

namespace lanework::care::environment {
namespace {

constexpr std::int64_t kDay = 24 * 60;

std::int64_t day_of(Moment moment) {
  return moment.minutes >= 0 ? moment.minutes / kDay : -((-moment.minutes + kDay - 1) / kDay);
}

bool has_seconds(std::string_view time) { return time.size() >= 8 && time.substr(5, 3) != ":00"; }

}  // namespace

Moment moment_of(Date date, TimeOfDay time) { return {date.days_since_epoch * kDay + time.minutes}; }

Date date_of(Moment moment) { return {static_cast<int>(day_of(moment))}; }

TimeOfDay time_of_day_of(Moment moment) { return {static_cast<int>(moment.minutes - day_of(moment) * kDay)}; }

Moment nearest(TimeOfDay time, Moment to) {
  const Moment same_day = moment_of(date_of(to), time);
  const std::int64_t later_by = minutes_between(to, same_day);
  if (later_by >= kDay / 2) return plus_minutes(same_day, -kDay);
  if (later_by < -kDay / 2) return plus_minutes(same_day, kDay);
  return same_day;
}

std::optional<Moment> parse_moment(std::string_view text, bool up) {
  if (text.size() < 16 || (text[10] != 'T' && text[10] != ' ')) return {};
  const std::string_view time_text = text.substr(11);
  if (time_text.size() != 5 && time_text.size() != 8) return {};
  const std::optional<Date> date = parse_iso_date(text.substr(0, 10));
  const std::optional<TimeOfDay> time = parse_time_of_day(time_text);
  if (!date || !time) return {};
  return plus_minutes(moment_of(*date, *time), up && has_seconds(time_text) ? 1 : 0);
}

std::string to_words(Moment moment, Moment seen_from) {
  const std::string time = to_text(time_of_day_of(moment));
  if (date_of(moment) == date_of(seen_from)) return time;
  return time + " on " + lanework::to_words(date_of(moment));
}

std::string to_iso(Moment moment) { return lanework::to_iso(date_of(moment)) + "T" + to_text(time_of_day_of(moment)); }

}  // namespace lanework::care::environment
