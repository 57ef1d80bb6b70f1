#include "core/care/load/load_reading.h"

#include <algorithm>
#include <numeric>

#include "core/care/load/weighted_mean.h"

namespace lanework::care::load {
namespace {

constexpr int kMinutesAnHour = 60;

// The Monday on or before the day; the first of 1970 was a Thursday.
Date monday_of(Date day) {
  constexpr int kThursday = 3;
  const int weekday = ((day.days_since_epoch + kThursday) % kDaysAWeek + kDaysAWeek) % kDaysAWeek;
  return Date{day.days_since_epoch - weekday};
}

PlayerWeek read_week(const std::vector<SessionEffort>& sessions, Date monday, Date day) {
  PlayerWeek week;
  week.monday = monday;
  const Date sunday{monday.days_since_epoch + kDaysAWeek - 1};
  week.whole = monday >= sessions.front().date && sunday <= day;
  std::array<double, kDaysAWeek> days{};
  std::array<bool, kDaysAWeek> busy{};
  for (const SessionEffort& one : sessions) {
    if (one.date < monday || one.date > sunday) continue;
    const auto at = static_cast<std::size_t>(days_between(monday, one.date));
    days.at(at) += session_load(one.effort, one.minutes);
    busy.at(at) = true;
    ++week.sessions;
    week.minutes += one.minutes;
    if (one.age) week.age = one.age;
  }
  week.load = week_load(days);
  week.more_hours_than_years = week.age && week.minutes > *week.age * kMinutesAnHour;
  if (!week.whole) {
    week.load.monotony.reset();
    week.load.strain.reset();
    return week;
  }
  week.rest_days = static_cast<int>(std::count(busy.begin(), busy.end(), false));
  week.little_rest = week.rest_days < kRestDaysAdvised;
  return week;
}

std::optional<WeightedMeans> means_on(const std::vector<SessionEffort>& sessions, Date day) {
  const Date first = sessions.front().date;
  const int days = days_between(first, day) + 1;
  if (days <= kDaysAWeek) return {};
  std::vector<double> loads(static_cast<std::size_t>(days), 0.0);
  for (const SessionEffort& one : sessions)
    loads[static_cast<std::size_t>(days_between(first, one.date))] += session_load(one.effort, one.minutes);
  WeightedMeans out;
  out.seed = std::accumulate(loads.begin(), loads.begin() + kDaysAWeek, 0.0) / kDaysAWeek;
  const std::vector<double> after(loads.begin() + kDaysAWeek, loads.end());
  out.short_mean = weighted_means(out.seed, after, kShortDays).back();
  out.long_mean = weighted_means(out.seed, after, kLongDays).back();
  out.settled_from = Date{first.days_since_epoch + kSettledAfterDays};
  out.settled = day >= out.settled_from;
  return out;
}

}  // namespace

LoadReading read_load(const std::vector<SessionEffort>& sessions, Date day) {
  LoadReading out;
  out.player = sessions.front().player;
  out.first = sessions.front().date;
  out.last = sessions.back().date;
  out.silent = days_between(out.last, day) >= kDaysAWeek;
  for (Date monday = monday_of(out.first); monday <= day; monday.days_since_epoch += kDaysAWeek)
    out.weeks.push_back(read_week(sessions, monday, day));
  out.means = means_on(sessions, day);
  return out;
}

std::vector<LoadReading> read_loads(const Sessions& sessions, Date day) {
  std::vector<LoadReading> out;
  const auto end = sessions.sessions.end();
  for (auto from = sessions.sessions.begin(); from != end;) {
    const auto to = std::find_if(from, end, [&](const SessionEffort& one) { return one.player != from->player; });
    out.push_back(read_load({from, to}, day));
    from = to;
  }
  return out;
}

}  // namespace lanework::care::load
