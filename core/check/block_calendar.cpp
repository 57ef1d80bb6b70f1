#include "core/check/block_calendar.h"

#include <algorithm>
#include <tuple>

namespace lanework::check {
namespace {

// A match's own warm-up ends this long before the kick-off.
constexpr int kMinutesBeforeKickOff = 5;

class CalendarMaker {
 public:
  CalendarMaker(const ClubMatter& club, const SquadWeek& squad) : club_(club), squad_(squad) {}

  SquadCalendar make() {
    for (int i = 0; i < 7 * club_.weeks; ++i) add_day({club_.monday.days_since_epoch + i});
    const auto earlier = [](const auto& a, const auto& b) {
      return std::tie(a.date, a.start_minutes) < std::tie(b.date, b.start_minutes);
    };
    std::stable_sort(out_.wishes.begin(), out_.wishes.end(), earlier);
    std::stable_sort(out_.fallen_out.begin(), out_.fallen_out.end(), earlier);
    return std::move(out_);
  }

 private:
  const ClubMatter& club_;
  const SquadWeek& squad_;
  SquadCalendar out_;

  [[nodiscard]] std::optional<int> days_to_match(Date day) const {
    std::optional<int> least;
    for (const SquadMatch& match : squad_.matches) {
      const int days = match.date.days_since_epoch - day.days_since_epoch;
      if (days >= 0) least = std::min(least.value_or(days), days);
    }
    return least;
  }

  [[nodiscard]] bool in_season(Date day) const { return club_.season_from <= day && day <= club_.season_to; }

  [[nodiscard]] std::vector<std::string> holidays_on(Date day) const {
    std::vector<std::string> names;
    for (const Holiday& holiday : club_.holidays) {
      if (holiday.from <= day && day <= holiday.to) names.push_back(holiday.name);
    }
    return names;
  }

  void add_day(Date day) {
    const SquadMatch* match = nullptr;
    for (const SquadMatch& other : squad_.matches) {
      if (other.date == day) match = &other;
    }
    if (match != nullptr && match->kick_off_minutes) add_warm_up(*match);
    for (const WeeklySlot& slot : squad_.slots) {
      if (slot.weekday == weekday_of(day)) add_slot(slot, day, match);
    }
  }

  void add_warm_up(const SquadMatch& match) {
    const auto minutes = static_cast<int>((match.warm_up_seconds + 59) / 60);
    const int start = std::max(0, *match.kick_off_minutes - kMinutesBeforeKickOff - minutes);
    if (!in_season(match.date)) {
      out_.fallen_out.push_back({match.date, start, {"season"}});
      return;
    }
    Wish wish = wish_on(match.date, start, match.warm_up_seconds, squad_.strip);
    wish.match_day = true;
    wish.elsewhere = match.away;
    out_.wishes.push_back(std::move(wish));
  }

  void add_slot(const WeeklySlot& slot, Date day, const SquadMatch* match) {
    const auto falls_out = [&](std::vector<std::string> words) {
      out_.fallen_out.push_back({day, slot.start_minutes, std::move(words)});
    };
    if (!in_season(day)) return falls_out({"season"});
    if (match != nullptr && match->kick_off_minutes) return falls_out({"match"});
    if (match == nullptr) {
      if (std::vector<std::string> holidays = holidays_on(day); !holidays.empty()) return falls_out(holidays);
      const std::vector<Date>& away = squad_.away_days;
      if (std::find(away.begin(), away.end(), day) != away.end()) return falls_out({"away"});
    }
    Wish wish = wish_on(day, slot.start_minutes, slot.seconds, slot.strip);
    wish.lanes = slot.lanes;
    wish.match_day = match != nullptr;
    wish.elsewhere = match != nullptr && match->away;
    out_.wishes.push_back(std::move(wish));
  }

  [[nodiscard]] Wish wish_on(Date day, int start, std::int64_t seconds, const std::string& strip) const {
    Wish wish;
    wish.date = day;
    wish.start_minutes = start;
    wish.seconds = seconds;
    wish.strip = strip;
    wish.lanes = club_.find_strip(strip)->strip.lanes;
    wish.days_to_match = days_to_match(day);
    wish.week = (day.days_since_epoch - club_.monday.days_since_epoch) / 7;
    return wish;
  }
};

}  // namespace

SquadCalendar calendar_of(const ClubMatter& club, const SquadWeek& squad) { return CalendarMaker(club, squad).make(); }

std::vector<int> spells_of(int weeks) {
  std::vector<int> lengths;
  for (int left = weeks; left > 0; left -= lengths.back()) {
    const bool threes = weeks % 3 == 0 || weeks == 5;
    lengths.push_back(std::min(left, threes ? 3 : 4));
  }
  std::vector<int> out;
  for (std::size_t spell = 0; spell < lengths.size(); ++spell) {
    for (int week = 0; week < lengths[spell]; ++week) out.push_back(static_cast<int>(spell));
  }
  return out;
}

int weekday_of(Date date) {
  // 1970-01-01 was a Thursday.
  const int shifted = (date.days_since_epoch + 3) % 7;
  return shifted < 0 ? shifted + 7 : shifted;
}

std::string words_of(Date date, int start_minutes) { return to_iso(date) + " " + to_text(TimeOfDay{start_minutes}); }

}  // namespace lanework::check
