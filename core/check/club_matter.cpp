#include "core/check/club_matter.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/check/read_matter.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kMany = 1'000'000;
constexpr double kLongestMinutes = 600;

class ClubReader {
 public:
  explicit ClubReader(const BlockDocuments& documents) : documents_(documents) {}

  Result<ClubMatter> read() {
    TableReader root(documents_.club.file, &documents_.club.root, "", faults_);
    read_frame(root);
    for (const StripDocument& strip : documents_.strips) read_ground(strip);
    for (TableReader& table : root.tables("lock")) read_lock(table);
    for (const SquadDocuments& squad : documents_.squads) read_squad(squad);
    std::sort(out_.squads.begin(), out_.squads.end(),
              [](const SquadWeek& a, const SquadWeek& b) { return a.id < b.id; });
    if (!faults_.empty()) return faults_;
    return std::move(out_);
  }

 private:
  const BlockDocuments& documents_;
  ClubMatter out_;
  Faults faults_;

  Date day(TableReader& table, std::string_view key) {
    const std::optional<Date> date = table.date(key);
    if (!date && !table.has(key)) table.fault(FaultCode::kMissing, key, "nothing", "a date");
    return date.value_or(Date{});
  }

  static Kit read_kit(TableReader& table) {
    Kit kit;
    kit.cones = static_cast<int>(table.integer_or("cones", 0, 0, kMany));
    kit.balls = static_cast<int>(table.integer_or("balls", 0, 0, kMany));
    kit.mats = static_cast<int>(table.integer_or("mats", 0, 0, kMany));
    return kit;
  }

  static void read_locks(TableReader& table, Locks& locks) {
    for (TableReader& row : table.tables("pins")) {
      Pin pin;
      pin.drill = row.text("drill");
      pin.rung = row.text_or("rung", "");
      if (row.has("sets")) {
        pin.step =
            Step{static_cast<int>(row.integer("sets", 1, 1000)), static_cast<int>(row.integer("amount", 1, 1000))};
      }
      locks.pins.push_back(std::move(pin));
    }
    locks.bans = table.texts("bans");
  }

  void read_frame(TableReader& root) {
    out_.name = root.text("name");
    TableReader season = root.table("season");
    out_.season_from = day(season, "from");
    out_.season_to = day(season, "to");
    TableReader block = root.table("block");
    out_.monday = day(block, "first_monday");
    out_.weeks = static_cast<int>(block.integer_or("weeks", 6, 1, 60));
    for (TableReader& table : root.tables("holiday")) {
      Holiday holiday;
      holiday.name = table.text("name");
      holiday.from = day(table, "from");
      holiday.to = day(table, "to");
      out_.holidays.push_back(std::move(holiday));
    }
    if (root.has("kit")) {
      TableReader kit = root.table("kit");
      out_.kit = read_kit(kit);
    }
    out_.served_first = root.texts("served_first");
  }

  void read_ground(const StripDocument& document) {
    TableReader table(document.strip.file, &document.strip.root, "", faults_);
    out_.strips.push_back({document.id, read_strip(table)});
  }

  void read_lock(TableReader& table) {
    Locks locks;
    if (table.has("ages")) {
      TableReader ages = table.table("ages");
      locks.age_from = static_cast<int>(ages.integer("from", 0, 100));
      locks.age_to = static_cast<int>(ages.integer("to", 0, 100));
    }
    read_locks(table, locks);
    out_.locks.push_back(std::move(locks));
  }

  void read_slot(TableReader& table, SquadWeek& squad) {
    static const std::vector<std::string_view> kDays = {"monday", "tuesday",  "wednesday", "thursday",
                                                        "friday", "saturday", "sunday"};
    WeeklySlot slot;
    slot.weekday = table.word("weekday", kDays);
    const std::optional<TimeOfDay> start = table.time("start");
    if (!start) table.fault(FaultCode::kMissing, "start", "no time", "a time of day");
    slot.start_minutes = start.value_or(TimeOfDay{}).minutes;
    slot.seconds = table.scaled("minutes", 60, 0, kLongestMinutes);
    slot.strip = table.text_or("strip", squad.strip);
    const GroundStrip* strip = out_.find_strip(slot.strip);
    if (strip == nullptr) {
      table.fault(FaultCode::kUnknownName, "strip", quote(slot.strip), "a strip of club.toml");
      return;
    }
    slot.lanes = static_cast<int>(table.integer_or("lanes", strip->strip.lanes, 1, strip->strip.lanes));
    squad.slots.push_back(std::move(slot));
  }

  void read_match(TableReader& table, std::int64_t usual_seconds, SquadWeek& squad) {
    SquadMatch match;
    match.date = day(table, "date");
    if (const std::optional<TimeOfDay> start = table.time("start")) match.kick_off_minutes = start->minutes;
    match.warm_up_seconds = usual_seconds;
    if (table.has("minutes")) match.warm_up_seconds = table.scaled("minutes", 60, 0, kLongestMinutes);
    match.away = table.boolean_or("away", false);
    squad.matches.push_back(match);
  }

  std::vector<Date> read_days(TableReader& table, std::string_view key) {
    std::vector<Date> days;
    for (const std::string& text : table.texts(key)) {
      const std::optional<Date> date = parse_iso_date(text);
      if (!date) table.fault(FaultCode::kBadDate, key, quote(text), "dates");
      if (date) days.push_back(*date);
    }
    return days;
  }

  void read_squad(const SquadDocuments& documents) {
    TableReader root(documents.squad.file, &documents.squad.root, "", faults_);
    TableReader routine(documents.routine.file, &documents.routine.root, "", faults_);
    TableReader match_day(documents.match_day_routine.file, &documents.match_day_routine.root, "", faults_);
    SquadWeek squad;
    squad.documents = &documents;
    squad.id = documents.id;
    squad.name = root.text("name");
    squad.routine = routine.text("id");
    for (const StripDocument& strip : documents_.strips) {
      if (!strip.file.empty() && strip.file == documents.strip_file) squad.strip = strip.id;
    }
    if (squad.strip.empty()) {
      root.fault(FaultCode::kUnknownName, "strip", quote(root.text("strip")), "the file of a strip of club.toml");
    }
    for (TableReader& table : root.tables("week")) read_slot(table, squad);
    const std::int64_t usual = 60 * match_day.integer("minutes", 1, 600);
    for (TableReader& table : root.tables("match")) read_match(table, usual, squad);
    for (const Date date : read_days(root, "matches")) {
      SquadMatch match;
      match.date = date;
      squad.matches.push_back(match);
    }
    squad.away_days = read_days(root, "away_days");
    if (root.has("expected_turnout")) {
      squad.turnout = static_cast<int>(root.integer("expected_turnout", 0, kMany));
    }
    TableReader kit = root.table("kit");
    squad.kit = read_kit(kit);
    squad.free_composition = root.boolean_or("free_composition", false);
    for (TableReader& table : root.tables("rung"))
      squad.rungs.push_back({table.text("drill"), table.text("rung"), day(table, "from")});
    TableReader locks = root.table("locks");
    read_locks(locks, squad.locks);
    out_.squads.push_back(std::move(squad));
  }
};

}  // namespace

const SquadWeek* ClubMatter::find(const std::string& id) const {
  const auto found = std::find_if(squads.begin(), squads.end(), [&](const SquadWeek& squad) { return squad.id == id; });
  return found == squads.end() ? nullptr : &*found;
}

const GroundStrip* ClubMatter::find_strip(const std::string& id) const {
  const auto found =
      std::find_if(strips.begin(), strips.end(), [&](const GroundStrip& strip) { return strip.id == id; });
  return found == strips.end() ? nullptr : &*found;
}

Result<ClubMatter> read_club_matter(const BlockDocuments& documents) { return ClubReader(documents).read(); }

}  // namespace lanework::check
