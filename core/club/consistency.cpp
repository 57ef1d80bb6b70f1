#include "core/club/consistency.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>
#include <utility>

namespace lanework::club {
namespace {

constexpr int kFewestPlayers = 2;
constexpr int kMostPlayers = 40;
constexpr int kYoungest = 8;
constexpr int kOldest = 19;
constexpr std::size_t kMostNamed = 6;  // players in one remark

std::string listed(const std::vector<std::string>& names) {
  std::string out;
  for (std::size_t i = 0; i < names.size() && i < kMostNamed; ++i) out += (i == 0 ? "" : ", ") + names[i];
  if (names.size() > kMostNamed) out += " and " + std::to_string(names.size() - kMostNamed) + " more";
  return out;
}

std::string span_in_words(const session::WeekSlot& slot) {
  const TimeOfDay end{slot.start.minutes + static_cast<int>((slot.length.count + 59) / 60)};
  return session::to_words(slot.weekday) + " " + to_text(slot.start) + " to " + to_text(end);
}

class ConsistencyCheck {
 public:
  ConsistencyCheck(const Club& club, const Allocation& allocation)
      : club_(club), settings_(club.settings), allocation_(allocation) {}

  Consistency run() {
    check_dates();
    check_names();
    for (const ClubSquad& squad : club_.squads) {
      check_week(squad);
      check_players(squad);
      check_locks(squad);
      check_routine(squad, squad.routine, squad.squad.places.routine);
      if (!squad.squad.weekly.matches.empty()) {
        check_routine(squad, squad.match_day_routine, squad.squad.places.match_day_routine);
      }
      check_matches(squad);
    }
    check_coaches();
    find_shared();
    find_at_once();
    check_restrictions();
    check_reported();
    for (std::size_t i = 0; i < club_.squads.size(); ++i) check_sessions(club_.squads[i], allocation_.calendars[i]);
    for (const Conflict& conflict : allocation_.conflicts) remark({}, to_words(conflict));
    return std::move(out_);
  }

 private:
  const Club& club_;
  const Settings& settings_;
  const Allocation& allocation_;
  Consistency out_;

  void fault(FaultCode code, const Place& place, std::string found, std::string expected) {
    out_.faults.push_back({code, place, std::move(found), std::move(expected), {}});
  }
  void remark(const Place& place, std::string sentence) { out_.remarks.push_back({place, std::move(sentence)}); }

  [[nodiscard]] std::string season() const {
    return "days of the season, " + to_iso(settings_.season_from) + " to " + to_iso(settings_.season_to);
  }
  [[nodiscard]] bool in_season(Date from, Date to) const {
    return settings_.season_from <= from && to <= settings_.season_to;
  }

  void check_dates() {
    const Date end{settings_.block_from.days_since_epoch + 7 * settings_.block_weeks - 1};
    if (!in_season(settings_.block_from, end)) {
      fault(FaultCode::kOutOfRange, settings_.block_place,
            "a block from " + to_iso(settings_.block_from) + " to " + to_iso(end), season());
    }
    for (const Holiday& holiday : settings_.holidays) {
      if (in_season(holiday.from, holiday.to)) continue;
      fault(FaultCode::kOutOfRange, holiday.place,
            quote(holiday.name) + " from " + to_iso(holiday.from) + " to " + to_iso(holiday.to), season());
    }
  }

  void check_names() {
    std::map<std::string, const ClubSquad*> names;
    std::map<std::string, const ClubSquad*> in_roster;
    for (const ClubSquad& squad : club_.squads) {
      const auto [first, is_new] = names.emplace(squad.squad.name, &squad);
      if (!is_new) {
        fault(FaultCode::kDuplicate, squad.squad.places.name, quote(squad.squad.name),
              "a name that " + first->second->file + " does not have");
      }
      if (squad.squad.club != settings_.name && !squad.squad.club.empty()) {
        remark(squad.squad.places.name, "the squad says it is of " + quote(squad.squad.club) + ", the folder is " +
                                            quote(settings_.name) + "'s");
      }
      if (squad.squad.in_roster.empty()) continue;
      const auto [claimed, is_first] = in_roster.emplace(squad.squad.in_roster, &squad);
      if (is_first) continue;
      fault(FaultCode::kDuplicate, squad.squad.places.in_roster, quote(squad.squad.in_roster),
            "players that are not those of " + claimed->second->file);
    }
  }

  void check_week(const ClubSquad& squad) {
    const std::vector<session::WeekSlot>& slots = squad.squad.weekly.slots;
    if (slots.empty()) {
      fault(FaultCode::kMissing, {squad.file, 0, 0, "week"}, "no slot in the week", "at least one [[week]]");
    }
    for (std::size_t i = 0; i < slots.size(); ++i) {
      if (slots[i].start.minutes * 60 + slots[i].length.count > 24 * 3600) {
        fault(FaultCode::kOutOfRange, slots[i].place, span_in_words(slots[i]), "a slot that ends before midnight");
      }
      for (std::size_t j = 0; j < i; ++j) {
        const bool same_day = slots[i].weekday == slots[j].weekday;
        const std::int64_t apart = std::int64_t{60} * (slots[i].start.minutes - slots[j].start.minutes);
        if (!same_day || apart >= slots[j].length.count) continue;
        fault(FaultCode::kContradiction, slots[i].place, span_in_words(slots[i]) + " beside " + span_in_words(slots[j]),
              "slots of one squad that do not overlap");
      }
    }
    for (const session::Match& match : squad.squad.weekly.matches) {
      if (!match.start) continue;
      const auto length = match.length.value_or(Seconds(60 * std::int64_t{squad.match_day_routine.minutes}));
      if (std::int64_t{60} * (match.start->minutes - kMinutesBeforeKickOff) >= length.count) continue;
      fault(FaultCode::kOutOfRange, match.place, "a kick-off at " + to_text(*match.start),
            "a kick-off that leaves time for the warm-up on the same day");
    }
  }

  void check_players(const ClubSquad& squad) {
    const Place& place = squad.squad.places.in_roster;
    if (squad.players.empty()) {
      return fault(FaultCode::kUnknownName, place,
                   squad.squad.in_roster.empty() ? "an empty roster" : quote(squad.squad.in_roster) + ", who is nobody",
                   "a squad that the roster's squad column names");
    }
    const int turnout = turnout_on(squad, settings_.block_from);
    if (turnout < kFewestPlayers || turnout > kMostPlayers) {
      fault(FaultCode::kOutOfRange, place,
            std::to_string(turnout) + (turnout == 1 ? " player" : " players") + " who take part",
            std::to_string(kFewestPlayers) + " to " + std::to_string(kMostPlayers));
    }
    const std::optional<int> age = age_on(squad, settings_.block_from);
    if (!age) {
      fault(FaultCode::kMissing, squad.squad.places.age, "no age here and no birth date or age in the roster",
            "age in the squad file, or a birth date column in the roster");
    } else if (*age < kYoungest || *age > kOldest) {
      fault(FaultCode::kOutOfRange, squad.squad.places.age, "a youngest player of " + std::to_string(*age) + " years",
            std::to_string(kYoungest) + " to " + std::to_string(kOldest) + " years");
    }
  }

  void check_locks(const ClubSquad& squad) {
    const session::Locks locks = locks_on(club_, squad, settings_.block_from);
    for (const session::Pin& pin : locks.pins) {
      if (std::find(locks.bans.begin(), locks.bans.end(), pin.drill) == locks.bans.end()) continue;
      fault(FaultCode::kContradiction, {squad.file, 0, 0, "locks"},
            quote(pin.drill) + " both pinned and banned for this squad", "one of the two, here and in club.toml");
    }
  }

  void check_routine(const ClubSquad& squad, const catalogue::Routine& routine, const Place& place) {
    std::vector<std::string> younger;
    std::vector<std::string> older;
    for (const people::Player& player : squad.players) {
      const std::optional<int> age = people::age_on(player, settings_.block_from);
      if (!age) continue;
      const std::string named = player.id + " (" + std::to_string(*age) + ")";
      if (*age < routine.age_from) younger.push_back(named);
      if (*age > routine.age_to) older.push_back(named);
    }
    const auto tell = [&](const std::vector<std::string>& who, const char* than) {
      if (who.empty()) return;
      remark(place, std::to_string(who.size()) + " of " + std::to_string(squad.players.size()) + " players " + than +
                        " than routine " + quote(routine.id) + " is for (" + std::to_string(routine.age_from) + " to " +
                        std::to_string(routine.age_to) + "): " + listed(who));
    };
    tell(younger, "younger");
    tell(older, "older");
  }

  void check_matches(const ClubSquad& squad) {
    const session::Weekly& weekly = squad.squad.weekly;
    for (const session::Match& match : weekly.matches) {
      const std::string when = "the match on " + to_iso(match.date);
      if (!in_season(match.date, match.date)) {
        remark(match.place, when + " is outside the season, it gets no warm-up");
        continue;
      }
      for (const Holiday& holiday : settings_.holidays) {
        if (match.date < holiday.from || match.date > holiday.to) continue;
        remark(match.place, when + " is in the holidays (" + holiday.name + "), it keeps its warm-up");
      }
      const bool away_day = std::binary_search(weekly.away_days.begin(), weekly.away_days.end(), match.date);
      if (away_day && !match.away) remark(match.place, when + " is at home on a day that the squad is away");
    }
  }

  void find_shared() {
    std::map<std::string, std::vector<std::string>> squads_of;
    for (const ClubSquad& squad : club_.squads) {
      for (const people::Player& player : squad.players) squads_of[player.id].push_back(squad.id);
    }
    for (const auto& [player, squads] : squads_of) {
      if (squads.size() > 1) out_.shared.push_back({player, squads});
    }
  }

  void check_reported() {
    if (club_.reported_of_nobody.empty()) return;
    remark({"club.toml", 0, 0, "care.entries"},
           "the entries hold back " + listed(club_.reported_of_nobody) +
               ", whom no roster has: players who have left, or a slip of the pen");
  }

  // A block sees the restrictions of every file, one evening only those of the squad's own.
  void check_restrictions() {
    for (const ClubSquad& squad : club_.squads) {
      std::set<std::string> unseen;
      const auto& list = squad.restrictions.list;
      for (std::size_t i = squad.own_restrictions; i < list.size(); ++i) {
        const auto is = [&](const people::Player& player) { return player.id == list[i].player; };
        if (std::any_of(squad.players.begin(), squad.players.end(), is)) unseen.insert(list[i].player);
      }
      if (unseen.empty()) continue;
      remark(
          {squad.file, 0, 0, "restrictions"},
          "the restrictions of " + listed({unseen.begin(), unseen.end()}) +
              " stand in another squad's file: they hold in a block, but an evening of this squad does not see them");
    }
  }

  // Told only where the club keeps the list at all.
  void check_coaches() {
    if (!club_.coaches) return;
    std::vector<std::string> without;
    std::vector<std::string> untaught;
    for (const ClubSquad& squad : club_.squads) {
      const std::vector<const Coach*> coaches = coaches_of(*club_.coaches, squad.id);
      const auto taught = [](const Coach* coach) { return !coach->taught.empty(); };
      if (coaches.empty()) {
        without.push_back(squad.id);
      } else if (std::none_of(coaches.begin(), coaches.end(), taught)) {
        untaught.push_back(squad.id);
      }
    }
    if (!without.empty()) remark({}, "no coach in coaches.toml: " + listed(without));
    if (!untaught.empty()) remark({}, "no coach taught yet: " + listed(untaught));
  }

  [[nodiscard]] std::size_t index_of(const std::string& id) const {
    return static_cast<std::size_t>(club_.find(id) - club_.squads.data());
  }

  void find_at_once() {
    std::map<std::pair<std::string, std::string>, std::vector<std::string>> players_of;
    for (const SharedPlayer& shared : out_.shared) {
      for (std::size_t j = 1; j < shared.squads.size(); ++j) {
        for (std::size_t i = 0; i < j; ++i) players_of[{shared.squads[i], shared.squads[j]}].push_back(shared.player);
      }
    }
    for (const auto& [squads, players] : players_of) tell_at_once(squads.first, squads.second, players);
  }

  void tell_at_once(const std::string& first, const std::string& second, const std::vector<std::string>& players) {
    std::map<std::tuple<session::Weekday, TimeOfDay, TimeOfDay>, std::vector<Date>> times;
    for (const PlannedSlot& a : allocation_.calendars[index_of(first)].slots) {
      for (const PlannedSlot& b : allocation_.calendars[index_of(second)].slots) {
        const std::int64_t apart = std::int64_t{60} * (b.start.minutes - a.start.minutes);
        if (a.date != b.date || apart >= a.length.count || -apart >= b.length.count) continue;
        times[{session::weekday_of(a.date), a.start, b.start}].push_back(a.date);
      }
    }
    for (const auto& [time, dates] : times) {
      const auto& [weekday, start, other] = time;
      remark({}, listed(players) + (players.size() == 1 ? " is" : " are") + " wanted twice at once, " +
                     session::to_words(weekday) + " from " + to_iso(dates.front()) +
                     (dates.size() == 1 ? "" : ", " + std::to_string(dates.size()) + " times") + ": " + first + " at " +
                     to_text(start) + ", " + second + " at " + to_text(other));
    }
  }

  void check_sessions(const ClubSquad& squad, const Calendar& calendar) {
    if (!calendar.slots.empty() || squad.squad.weekly.slots.empty()) return;
    std::set<std::string> reasons;
    for (const MissedSlot& missed : calendar.missed) reasons.insert(missed.why);
    remark(squad.squad.places.name, "no session in the whole block: " + listed({reasons.begin(), reasons.end()}));
  }
};

}  // namespace

Consistency find_inconsistencies(const Club& club, const Allocation& allocation) {
  return ConsistencyCheck(club, allocation).run();
}

}  // namespace lanework::club
