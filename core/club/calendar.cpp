#include "core/club/calendar.h"

#include <algorithm>
#include <cassert>
#include <tuple>

#include "core/club/strip_share.h"

namespace lanework::club {
namespace {

// The next match on or after the day; null where there is none. Matches stand by date.
const session::Match* next_match(const session::Weekly& weekly, Date day) {
  const auto before = [](const session::Match& match, Date wanted) { return match.date < wanted; };
  const auto at = std::lower_bound(weekly.matches.begin(), weekly.matches.end(), day, before);
  return at == weekly.matches.end() ? nullptr : &*at;
}

class Expansion {
 public:
  Expansion(const Club& club, const ClubSquad& squad) : club_(club), squad_(squad), weekly_(squad.squad.weekly) {}

  Calendar over(Date monday, int weeks) {
    for (int i = 0; i < 7 * weeks; ++i) add_day(Date{monday.days_since_epoch + i});
    const auto earlier = [](const auto& a, const auto& b) {
      return std::tie(a.date, a.start) < std::tie(b.date, b.start);
    };
    std::stable_sort(out_.slots.begin(), out_.slots.end(), earlier);
    std::stable_sort(out_.missed.begin(), out_.missed.end(), earlier);
    return std::move(out_);
  }

 private:
  const Club& club_;
  const ClubSquad& squad_;
  const session::Weekly& weekly_;
  Calendar out_;

  void add_day(Date day) {
    const session::Match* next = next_match(weekly_, day);
    const session::Match* match = next != nullptr && next->date == day ? next : nullptr;
    if (match != nullptr && match->start) add_match(*match);
    for (const session::WeekSlot& slot : weekly_.slots) {
      if (slot.weekday == session::weekday_of(day)) add_weekly(slot, day, match);
    }
  }

  [[nodiscard]] bool in_season(Date day) const {
    return club_.settings.season_from <= day && day <= club_.settings.season_to;
  }

  [[nodiscard]] const Holiday* holiday_on(Date day) const {
    for (const Holiday& holiday : club_.settings.holidays) {
      if (holiday.from <= day && day <= holiday.to) return &holiday;
    }
    return nullptr;
  }

  void miss(Date day, TimeOfDay start, Missed reason, std::string why, std::string of = {}) {
    out_.missed.push_back({day, start, reason, std::move(why), std::move(of)});
  }

  void add_weekly(const session::WeekSlot& slot, Date day, const session::Match* match) {
    if (!in_season(day)) return miss(day, slot.start, Missed::kOutOfSeason, "outside the season");
    if (match != nullptr && match->start) {
      return miss(day, slot.start, Missed::kMatchTakesIts, "the match has a warm-up of its own");
    }
    const Holiday* holiday = holiday_on(day);
    if (match == nullptr && holiday != nullptr) {
      return miss(day, slot.start, Missed::kHoliday, holiday->name, holiday->name);
    }
    const bool away = std::binary_search(weekly_.away_days.begin(), weekly_.away_days.end(), day);
    if (match == nullptr && away) return miss(day, slot.start, Missed::kAwayDay, "the squad is away");
    PlannedSlot planned = planned_on(day, slot.start, slot.length, slot.strip, slot.lanes);
    planned.match_day = match != nullptr;
    planned.elsewhere = match != nullptr && match->away;
    out_.slots.push_back(std::move(planned));
  }

  void add_match(const session::Match& match) {
    const Seconds length = match.length.value_or(Seconds(60 * std::int64_t{squad_.match_day_routine.minutes}));
    const auto minutes = static_cast<int>((length.count + 59) / 60);
    const TimeOfDay start{std::max(0, match.start->minutes - kMinutesBeforeKickOff - minutes)};
    if (!in_season(match.date)) return miss(match.date, start, Missed::kOutOfSeason, "outside the season");
    PlannedSlot planned = planned_on(match.date, start, length, {}, 0);
    planned.match_day = true;
    planned.elsewhere = match.away;
    out_.slots.push_back(std::move(planned));
  }

  [[nodiscard]] const ClubStrip& strip_of(const std::string& id) const {
    const std::vector<ClubStrip>& strips = club_.settings.strips;
    if (id.empty()) return strips[squad_.strip];
    const auto found =
        std::find_if(strips.begin(), strips.end(), [&](const ClubStrip& strip) { return strip.id == id; });
    assert(found != strips.end());
    return *found;
  }

  [[nodiscard]] PlannedSlot planned_on(Date day, TimeOfDay start, Seconds length, const std::string& strip_id,
                                       int lanes) const {
    const ClubStrip& strip = strip_of(strip_id);
    PlannedSlot planned;
    planned.date = day;
    planned.start = start;
    planned.length = length;
    planned.strip_id = strip.id;
    planned.strip = share_of(strip.strip, lanes == 0 ? strip.strip.lanes : lanes);
    planned.kit = squad_.squad.kit;
    const session::Match* next = next_match(weekly_, day);
    if (next != nullptr) planned.days_to_match = days_between(day, next->date);
    return planned;
  }
};

}  // namespace

Calendar expand(const Club& club, const ClubSquad& squad, Date monday, int weeks) {
  assert(session::weekday_of(monday) == session::Weekday::kMonday && weeks > 0);
  return Expansion(club, squad).over(monday, weeks);
}

session::Squad squad_on(const Club& club, const ClubSquad& squad, const PlannedSlot& slot) {
  session::Squad tonight = squad.squad;
  tonight.has_slot = true;
  tonight.date = slot.date;
  tonight.start = slot.start;
  tonight.slot = slot.length;
  tonight.days_to_match = slot.days_to_match;
  tonight.turnout = squad.squad.weekly.expected_turnout;
  tonight.late = 0;
  tonight.away.clear();
  session::Locks locks = locks_on(club, squad, slot.date);
  tonight.pins = std::move(locks.pins);
  tonight.bans = std::move(locks.bans);
  tonight.free_composition = false;
  tonight.more_than_routine = false;
  tonight.kit = slot.kit;
  return tonight;
}

Result<session::Evening> evening_of(const Club& club, const ClubSquad& squad, const PlannedSlot& slot) {
  return session::make_evening(squad_on(club, squad, slot), slot.strip, squad.players, squad.restrictions);
}

const catalogue::Routine& routine_of(const ClubSquad& squad, const PlannedSlot& slot) {
  return slot.match_day ? squad.match_day_routine : squad.routine;
}

}  // namespace lanework::club
