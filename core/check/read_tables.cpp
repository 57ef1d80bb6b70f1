// docs/formats/catalogue.md
#include <utility>

#include "core/check/read_matter.h"

namespace lanework::check {
namespace {

constexpr std::int64_t kMany = 1'000'000;

void read_families(TableReader& catalogue, Matter& matter) {
  TableReader table = catalogue.table("families");
  for (TableReader& row : table.tables("family")) {
    Family family;
    family.key = row.text("key");
    family.name = row.text("name");
    family.rank = static_cast<int>(row.integer("rank", 0, 100));
    family.phases = row.texts("phases");
    family.required = row.boolean_or("required", true);
    family.weight = row.integer("weight", 0, kMany);
    family.session_seconds = row.integer("session_seconds", 1, kMany);
    family.week_seconds = row.integer_or("week_seconds", 5 * family.session_seconds / 2, 1, kMany);
    if (row.has("eccentric_first")) {
      TableReader eccentric = row.table("eccentric_first");
      family.eccentric_from_age = static_cast<int>(eccentric.integer("from_age", 0, 100));
      family.other_work_percent = eccentric.integer("other_work_percent", 1, 100);
    }
    matter.families.push_back(std::move(family));
  }
}

void read_gaits(TableReader& catalogue, Matter& matter) {
  TableReader table = catalogue.table("gaits");
  for (TableReader& row : table.tables("gait")) {
    Gait gait;
    const std::vector<std::int64_t> speeds = row.scaled_list("speeds", gait.speed_mm_a_second.size(), 1000, 0.001, 100);
    for (std::size_t i = 0; i < gait.speed_mm_a_second.size(); ++i) gait.speed_mm_a_second[i] = speeds[i];
    gait.spread_thousandths = row.scaled("spread", 1000, 0, 10);
    matter.gaits.emplace(row.text("key"), gait);
  }
}

Band read_band(TableReader& row) {
  Band band;
  TableReader ages = row.table("ages");
  band.age_from = static_cast<int>(ages.integer("from", 0, 100));
  band.age_to = static_cast<int>(ages.integer("to", 0, 100));
  band.jump_cap = row.integer("jump_cap_session", 0, kMany);
  band.eccentric = row.integer("eccentric_session", 0, kMany);
  band.hard_running_metres = row.integer("hard_running_session_metres", 0, kMany);
  // One evening does not ask for the week's.
  band.jump_cap_week = row.integer_or("jump_cap_week", 0, 0, kMany);
  band.eccentric_week = row.integer_or("eccentric_week", 0, 0, kMany);
  band.hard_running_week_metres = row.integer_or("hard_running_week_metres", 0, 0, kMany);
  return band;
}

MatchDay read_match_day(TableReader& row) {
  MatchDay day;
  day.days = row.integer("days", 0, kMany);
  day.contacts_percent = row.integer("contacts_percent", 0, 100);
  day.eccentric_percent = row.integer("eccentric_percent", 0, 100);
  day.hard_running_percent = row.integer("hard_running_percent", 0, 100);
  day.new_drills = row.boolean_or("new_drills", true);
  return day;
}

void read_limits(TableReader& catalogue, Matter& matter) {
  TableReader table = catalogue.table("limits");
  Limits& limits = matter.limits;
  limits.most_new_drills = table.integer("most_new_drills", 0, kMany);
  limits.warm_up_share_percent = table.integer("warm_up_share_percent", 0, 100);
  TableReader weights = table.table("contact_weight");
  for (const char* intensity : {"low", "medium", "high"}) {
    limits.contact_weight_thousandths[intensity] = weights.scaled(intensity, 1000, 0, 1000);
  }
  for (TableReader& row : table.tables("ceilings")) limits.bands.push_back(read_band(row));
  for (TableReader& row : table.tables("match")) limits.match.push_back(read_match_day(row));
  if (limits.bands.empty()) table.fault(FaultCode::kMissing, "ceilings", "nothing", "at least one band of ages");
}

}  // namespace

void read_tables(TableReader& catalogue, Matter& matter) {
  read_families(catalogue, matter);
  read_gaits(catalogue, matter);
  read_limits(catalogue, matter);
}

}  // namespace lanework::check
