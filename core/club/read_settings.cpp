#include "core/club/read_settings.h"

#include <algorithm>
#include <set>

#include "core/session/read_locks.h"
#include "core/session/weekly.h"

namespace lanework::club {
namespace {

class SettingsReader {
 public:
  SettingsReader(const ClubDocuments& documents, const catalogue::Catalogue& all_drills, Faults& faults)
      : documents_(documents),
        all_drills_(all_drills),
        faults_(faults),
        root_(documents.club.file, &documents.club.root, "", faults) {}

  Settings read() {
    settings_.name = root_.text("name");
    read_season();
    read_block();
    for (TableReader& table : root_.tables("holiday")) read_holiday(table);
    std::stable_sort(settings_.holidays.begin(), settings_.holidays.end(),
                     [](const Holiday& a, const Holiday& b) { return a.from < b.from; });
    read_strips();
    read_kit();
    for (TableReader& table : root_.tables("lock")) read_lock(table);
    read_care();
    read_served_first();
    root_.finish();
    return std::move(settings_);
  }

 private:
  // Files and tables that whoever reads the folder has taken up already.
  void read_care() {
    if (!root_.has("care")) return;
    TableReader care = root_.table("care");
    for (const char* key : {"entries", "return_rules"}) care.text_or(key, "");
    settings_.region = care.text_or("region", "");
    care.finish();
  }

  const ClubDocuments& documents_;
  const catalogue::Catalogue& all_drills_;
  Faults& faults_;
  TableReader root_;
  Settings settings_;

  std::optional<Date> day(TableReader& table, std::string_view key) {
    const auto date = table.date(key);
    if (!date && table.present() && !table.has(key)) {
      table.fault(FaultCode::kMissing, key, "nothing", "a date such as 2026-11-23");
    }
    return date;
  }

  // The days from and to of a table; a fault where they stand the wrong way round.
  std::optional<std::pair<Date, Date>> days(TableReader& table, std::string_view from_key, std::string_view to_key) {
    const auto from = day(table, from_key);
    const auto to = day(table, to_key);
    if (!from || !to) return {};
    if (*to < *from) {
      table.fault(FaultCode::kContradiction, to_key, to_iso(*to), "a day not before " + to_iso(*from));
      return {};
    }
    return std::pair(*from, *to);
  }

  void read_season() {
    TableReader season = root_.table("season");
    if (!root_.has("season")) root_.fault(FaultCode::kMissing, "season", "nothing", "a table with from and to");
    if (const auto both = days(season, "from", "to")) {
      settings_.season_from = both->first;
      settings_.season_to = both->second;
    }
    season.finish();
  }

  void read_block() {
    TableReader block = root_.table("block");
    if (!root_.has("block")) {
      root_.fault(FaultCode::kMissing, "block", "nothing", "a table with first_monday and weeks");
    }
    settings_.block_place = block.place("first_monday");
    settings_.block_weeks = static_cast<int>(block.integer_or("weeks", 6, kFewestWeeks, kMostWeeks));
    if (const auto monday = day(block, "first_monday")) {
      settings_.block_from = *monday;
      if (session::weekday_of(*monday) != session::Weekday::kMonday) {
        block.fault(FaultCode::kBadDate, "first_monday", to_iso(*monday) + ", a " + weekday_name(*monday),
                    "a Monday, such as " +
                        to_iso(Date{monday->days_since_epoch - static_cast<int>(session::weekday_of(*monday))}));
      }
    }
    block.finish();
  }

  void read_holiday(TableReader& table) {
    Holiday holiday;
    holiday.place = table.place();
    holiday.name = table.text("name");
    const auto both = days(table, "from", "to");
    table.finish();
    if (!both) return;
    holiday.from = both->first;
    holiday.to = both->second;
    settings_.holidays.push_back(std::move(holiday));
  }

  // The tables themselves were taken apart when their files were read.
  void read_strips() {
    if (root_.tables("strip").empty() && !root_.has("strip")) {
      root_.fault(FaultCode::kMissing, "strip", "no strip", "at least one [[strip]] with an id");
    }
    std::set<std::string> seen;
    for (const StripDocument& document : documents_.strips) {
      if (!seen.insert(document.id).second) {
        faults_.push_back(
            {FaultCode::kDuplicate, document.place, "strip " + quote(document.id) + " twice", "each id once", {}});
        continue;
      }
      if (!document.readable) continue;
      const auto strip = session::read_strip(document.strip);
      if (strip) settings_.strips.push_back({document.id, strip.value(), document.place});
      if (!strip) faults_.insert(faults_.end(), strip.faults().begin(), strip.faults().end());
    }
    std::sort(settings_.strips.begin(), settings_.strips.end(),
              [](const ClubStrip& a, const ClubStrip& b) { return a.id < b.id; });
  }

  void read_kit() {
    TableReader table = root_.table("kit");
    session::Kit kit;
    kit.cones = static_cast<int>(table.integer_or("cones", 0, 0, 5000));
    kit.balls = static_cast<int>(table.integer_or("balls", 0, 0, 5000));
    kit.mats = static_cast<int>(table.integer_or("mats", 0, 0, 5000));
    table.finish();
    if (table.present()) settings_.kit = kit;
  }

  void read_lock(TableReader& table) {
    BandLocks band;
    band.place = table.place();
    TableReader ages = table.table("ages");
    if (ages.present()) {
      band.age_from = static_cast<int>(ages.integer("from", 8, 19));
      band.age_to = static_cast<int>(ages.integer("to", 8, 19));
      if (band.age_to < band.age_from) {
        ages.fault(FaultCode::kContradiction, "to", std::to_string(band.age_to),
                   "an age not below " + std::to_string(band.age_from));
      }
    }
    ages.finish();
    band.locks.pins = session::read_pins(table, all_drills_);
    band.locks.bans = session::read_bans(table, all_drills_);
    table.finish();
    settings_.locks.push_back(std::move(band));
  }

  void read_served_first() {
    settings_.served_first = root_.texts("served_first");
    for (const std::string& id : settings_.served_first) {
      const auto same = [&](const SquadDocuments& squad) { return squad.id == id; };
      if (std::any_of(documents_.squads.begin(), documents_.squads.end(), same)) continue;
      root_.fault(FaultCode::kUnknownName, "served_first", quote(id),
                  "the name of a file in squads/ without its ending");
    }
  }
};

}  // namespace

Settings read_settings(const ClubDocuments& documents, const catalogue::Catalogue& all_drills, Faults& faults) {
  return SettingsReader(documents, all_drills, faults).read();
}

}  // namespace lanework::club
