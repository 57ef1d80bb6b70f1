#include "core/session/read_weekly.h"

#include <algorithm>
#include <array>
#include <tuple>

#include "core/session/read_locks.h"

namespace lanework::session {
namespace {

constexpr int kFewestPlayers = 2;
constexpr int kMostPlayers = 40;

const std::vector<std::string_view>& weekday_words() {
  static const std::vector<std::string_view> kWords = {"monday", "tuesday",  "wednesday", "thursday",
                                                       "friday", "saturday", "sunday"};
  return kWords;
}

WeekSlot read_slot(TableReader& table) {
  WeekSlot slot;
  slot.place = table.place();
  slot.weekday = static_cast<Weekday>(table.word("weekday", weekday_words()));
  const auto start = table.time("start");
  if (!start && !table.has("start")) {
    table.fault(FaultCode::kMissing, "start", "nothing", "a time of day such as 18:00:00");
  }
  slot.start = start.value_or(TimeOfDay{});
  slot.length = Seconds(table.scaled("minutes", 60, 5, 60));
  slot.strip = table.text_or("strip", "");
  slot.lanes = static_cast<int>(table.integer_or("lanes", 0, 1, 12));
  table.finish();
  return slot;
}

// Empty where it has no date.
std::optional<Match> read_match(TableReader& table) {
  Match match;
  match.place = table.place();
  const auto date = table.date("date");
  if (!date && !table.has("date")) {
    table.fault(FaultCode::kMissing, "date", "a match without a date", "a date such as 2026-11-28");
  }
  match.start = table.time("start");
  match.opponent = table.text_or("opponent", "");
  const Seconds length(table.scaled_or("minutes", 60, 5, 5, 60));
  if (table.has("minutes")) match.length = length;
  match.away = table.boolean_or("away", false);
  if (match.length && !table.has("start")) {
    table.fault(FaultCode::kContradiction, "minutes", "minutes of a warm-up without a kick-off",
                "start, the time of the kick-off, too");
  }
  table.finish();
  if (!date) return {};
  match.date = *date;
  return match;
}

// A list of days; what is no day is a fault.
std::vector<Date> read_days(TableReader& table, std::string_view key) {
  std::vector<Date> days;
  for (const std::string& text : table.texts(key)) {
    if (const auto date = parse_iso_date(text)) {
      days.push_back(*date);
    } else {
      table.fault(FaultCode::kBadDate, key, quote(text), "dates such as 2026-11-28");
    }
  }
  return days;
}

void sort_matches(TableReader& root, std::vector<Match>& matches) {
  std::stable_sort(matches.begin(), matches.end(), [](const Match& a, const Match& b) { return a.date < b.date; });
  for (std::size_t i = 1; i < matches.size(); ++i) {
    if (matches[i].date != matches[i - 1].date) continue;
    root.fault(FaultCode::kDuplicate, root.has("match") ? "match" : "matches",
               "two matches on " + to_iso(matches[i].date), "one a day", "a tournament is one match here");
  }
}

}  // namespace

Weekday weekday_of(Date date) {
  return static_cast<Weekday>(((date.days_since_epoch + 3) % 7 + 7) % 7);  // 1970-01-01 was a Thursday
}

std::string to_words(Weekday day) {
  static constexpr std::array<const char*, 7> kNames = {"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                        "Friday", "Saturday", "Sunday"};
  return kNames.at(static_cast<std::size_t>(day));
}

Weekly read_weekly(TableReader& root, const catalogue::Catalogue& catalogue) {
  Weekly weekly;
  for (TableReader& table : root.tables("week")) weekly.slots.push_back(read_slot(table));
  std::stable_sort(weekly.slots.begin(), weekly.slots.end(), [](const WeekSlot& a, const WeekSlot& b) {
    return std::tie(a.weekday, a.start) < std::tie(b.weekday, b.start);
  });
  for (TableReader& table : root.tables("match")) {
    if (auto match = read_match(table)) weekly.matches.push_back(std::move(*match));
  }
  for (const Date day : read_days(root, "matches")) {
    Match match;
    match.date = day;
    match.place = root.place("matches");
    weekly.matches.push_back(std::move(match));
  }
  sort_matches(root, weekly.matches);
  weekly.away_days = read_days(root, "away_days");
  std::sort(weekly.away_days.begin(), weekly.away_days.end());
  weekly.match_day_routine = root.text_or("match_day_routine", weekly.match_day_routine);
  const auto expected =
      static_cast<int>(root.integer_or("expected_turnout", kFewestPlayers, kFewestPlayers, kMostPlayers));
  if (root.has("expected_turnout")) weekly.expected_turnout = expected;
  weekly.free_composition = root.boolean_or("free_composition", false);
  TableReader locks = root.table("locks");
  weekly.locks.pins = read_pins(locks, catalogue);
  weekly.locks.bans = read_bans(locks, catalogue);
  locks.finish();
  weekly.rungs = read_rungs(root, catalogue);
  return weekly;
}

}  // namespace lanework::session
