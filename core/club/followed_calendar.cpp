#include "core/club/followed_calendar.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <map>
#include <utility>

#include "core/club/icalendar.h"
#include "core/club/icalendar_lines.h"

namespace lanework::club {
namespace {

using Evenings = std::vector<FollowedEvening>;
using Key = std::pair<Date, int>;

Key key_of(const FollowedEvening& evening) { return {evening.date, evening.number}; }

// The same but for when it came to be so.
bool says_the_same(const FollowedEvening& a, FollowedEvening b) {
  b.revision = a.revision;
  b.changed = a.changed;
  return a == b;
}

// '20261120T080000Z'.
std::string utc(std::int64_t seconds) {
  constexpr std::int64_t kSecondsADay = 86'400;
  const std::int64_t days = seconds / kSecondsADay;
  const auto rest = static_cast<int>(seconds % kSecondsADay);
  const CivilDate day = civil(Date{static_cast<int>(days)});
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%04d%02d%02dT%02d%02d%02dZ", day.year, day.month, day.day, rest / 3600,
                rest / 60 % 60, rest % 60);
  return text.data();
}

class Lines {
 public:
  void line(const std::string& name, const std::string& value) { text_ += calendar_line(name + ":" + value); }
  void text(const std::string& name, const std::string& value) {
    if (!value.empty()) line(name, calendar_text(value));
  }
  [[nodiscard]] std::string take() { return std::move(text_); }

 private:
  std::string text_;
};

void add_evening(Lines& out, const FollowedSquad& squad, const FollowedEvening& evening) {
  const std::string day = calendar_time(evening.date, 0).substr(0, std::string_view("20261124").size());
  out.line("BEGIN", "VEVENT");
  out.text("UID", squad.squad + "-" + day + "-" + std::to_string(evening.number) + "@" + calendar_owner(squad.club) +
                      ".lanework");
  out.line("DTSTAMP", utc(evening.changed));
  out.line("LAST-MODIFIED", utc(evening.changed));
  out.line("SEQUENCE", std::to_string(evening.revision));
  out.line("STATUS", evening.called_off ? "CANCELLED" : "CONFIRMED");
  out.line("DTSTART", calendar_time(evening.date, evening.start.minutes));
  out.line("DTEND", calendar_time(evening.date, evening.start.minutes + evening.minutes));
  out.text("SUMMARY", squad.name + (evening.before_match ? ": warm-up before the match" : ": warm-up"));
  out.text("LOCATION", evening.place);
  out.line("END", "VEVENT");
}

}  // namespace

Evenings followed_evenings(const Calendar& calendar) {
  Evenings out;
  for (const PlannedSlot& slot : calendar.slots) {
    const bool same_day = !out.empty() && out.back().date == slot.date;
    const auto minutes = static_cast<int>((slot.length.count + 59) / 60);
    out.push_back({slot.date, same_day ? out.back().number + 1 : 1, slot.start, minutes, slot.match_day, place_of(slot),
                   0, 0, false});
  }
  return out;
}

Evenings said_now(const Evenings& before, const Evenings& planned, Date plan_from, Date today,
                  std::int64_t now_seconds) {
  const Date oldest{today.days_since_epoch - kDaysEveningsStay};
  std::map<Key, FollowedEvening> out;
  for (FollowedEvening evening : before) {
    if (evening.date < oldest || (evening.called_off && evening.date < today)) continue;
    // The plan speaks of its own days, and nobody takes back what is over; planned ones are put in below.
    const bool goes = evening.date >= plan_from && evening.date >= today && !evening.called_off;
    const bool planned_still = std::any_of(planned.begin(), planned.end(),
                                           [&](const FollowedEvening& one) { return key_of(one) == key_of(evening); });
    if (goes && !planned_still) {
      evening.called_off = true;
      evening.revision += 1;
      evening.changed = now_seconds;
    }
    out.emplace(key_of(evening), std::move(evening));
  }
  for (const FollowedEvening& evening : planned) {
    if (evening.date < oldest) continue;
    const auto [place, is_new] = out.try_emplace(key_of(evening), evening);
    FollowedEvening& said = place->second;
    if (!is_new && says_the_same(said, evening)) continue;
    const std::int64_t revision = is_new ? 0 : said.revision + 1;
    said = evening;
    said.revision = revision;
    said.changed = now_seconds;
  }
  Evenings all;
  for (auto& [key, evening] : out) all.push_back(std::move(evening));
  return all;
}

std::string to_icalendar(const FollowedSquad& squad, const Evenings& evenings) {
  Lines out;
  out.line("BEGIN", "VCALENDAR");
  out.line("VERSION", "2.0");
  out.line("PRODID", "-//Lanework//Evenings of a squad//EN");
  out.line("CALSCALE", "GREGORIAN");
  out.text("NAME", squad.name);
  out.text("X-WR-CALNAME", squad.name);
  // How often to look again: RFC 7986, 5.7, and the name that was in use before it.
  out.line("REFRESH-INTERVAL;VALUE=DURATION", "PT1H");
  out.line("X-PUBLISHED-TTL", "PT1H");
  for (const FollowedEvening& evening : evenings) add_evening(out, squad, evening);
  out.line("END", "VCALENDAR");
  return out.take();
}

}  // namespace lanework::club
