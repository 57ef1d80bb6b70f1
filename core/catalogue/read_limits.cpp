#include <algorithm>

#include "core/catalogue/fields.h"
#include "core/catalogue/tables.h"

namespace lanework::catalogue {
namespace {

constexpr std::int64_t kMostLoad = 100'000;
constexpr std::size_t kMostMatchDays = 8;

// A load's two ceilings; a week holds at least one session.
void read_pair_of(TableReader& table, const std::string& session_key, const std::string& week_key,
                  std::int64_t& session, std::int64_t& week) {
  const std::size_t before = table.faults_so_far();
  session = table.integer(session_key, 0, kMostLoad);
  week = table.integer(week_key, 0, kMostLoad);
  if (table.faults_so_far() == before && session > week) {
    table.fault(FaultCode::kContradiction, week_key, std::to_string(week),
                "at least the session's, " + std::to_string(session));
  }
}

Ceilings read_band(TableReader& table, std::int64_t share_percent) {
  Ceilings band{};
  const AgeRange ages = read_ages(table);
  band.age_from = ages.from;
  band.age_to = ages.to;
  read_pair_of(table, "jump_cap_session", "jump_cap_week", band.contacts_session, band.contacts_week);
  band.contacts_session = band.contacts_session * share_percent / 100;
  band.contacts_week = band.contacts_week * share_percent / 100;
  read_pair_of(table, "eccentric_session", "eccentric_week", band.eccentric_session, band.eccentric_week);
  read_pair_of(table, "hard_running_session_metres", "hard_running_week_metres", band.hard_running_session,
               band.hard_running_week);
  band.sources = read_sources(table);
  table.finish();
  return band;
}

// Bands follow each other without a gap, and an older band never allows less.
void check_bands(const std::vector<Ceilings>& bands, std::vector<TableReader>& tables) {
  int next = kYoungestAge;
  for (std::size_t i = 0; i < bands.size(); ++i) {
    if (bands[i].age_from != next) {
      tables[i].fault(FaultCode::kContradiction, "ages", "from " + std::to_string(bands[i].age_from),
                      "from " + std::to_string(next) + ", so that the bands cover 8 to 19 once");
      return;
    }
    next = bands[i].age_to + 1;
    if (i == 0) continue;
    const Ceilings& younger = bands[i - 1];
    const auto not_below = [&](std::string_view key, std::int64_t younger_value, std::int64_t value) {
      if (value < younger_value) {
        tables[i].fault(FaultCode::kContradiction, key, "less than the younger band's", "at least as much");
      }
    };
    not_below("jump_cap_session", younger.contacts_session, bands[i].contacts_session);
    not_below("jump_cap_week", younger.contacts_week, bands[i].contacts_week);
    not_below("eccentric_session", younger.eccentric_session, bands[i].eccentric_session);
    not_below("eccentric_week", younger.eccentric_week, bands[i].eccentric_week);
    not_below("hard_running_session_metres", younger.hard_running_session, bands[i].hard_running_session);
    not_below("hard_running_week_metres", younger.hard_running_week, bands[i].hard_running_week);
  }
  if (next != kOldestAge + 1) {
    tables.back().fault(FaultCode::kContradiction, "ages", "to " + std::to_string(next - 1),
                        "to 19, so that the bands cover 8 to 19 once");
  }
}

MatchDistance read_match(TableReader& table, std::size_t position) {
  MatchDistance row{};
  const std::size_t before = table.faults_so_far();
  row.days = static_cast<int>(table.integer("days", 0, kMostMatchDays));
  if (table.faults_so_far() == before && row.days != static_cast<int>(position)) {
    table.fault(FaultCode::kContradiction, "days", std::to_string(row.days),
                std::to_string(position) + ": days ascend from 0");
  }
  row.contacts_percent = static_cast<int>(table.integer("contacts_percent", 0, 100));
  row.eccentric_percent = static_cast<int>(table.integer("eccentric_percent", 0, 100));
  row.hard_running_percent = static_cast<int>(table.integer("hard_running_percent", 0, 100));
  row.new_drills = table.boolean_or("new_drills", true);
  row.sources = read_sources(table);
  table.finish();
  return row;
}

std::array<int, 3> read_contact_weights(TableReader& root) {
  if (!root.has("contact_weight")) {
    root.fault(FaultCode::kMissing, "contact_weight", "nothing", "a table { low, medium, high }");
  }
  TableReader table = root.table("contact_weight");
  const std::size_t before = table.faults_so_far();
  std::array<int, 3> weights{};
  for (std::size_t i = 0; i < weights.size(); ++i) {
    weights[i] = static_cast<int>(table.scaled(intensity_words()[i], 1000, 0, 10));
  }
  if (table.faults_so_far() == before && !std::is_sorted(weights.begin(), weights.end())) {
    table.fault(FaultCode::kContradiction, "high", "weights that fall", "weights rising from low to high");
  }
  table.finish();
  return weights;
}

}  // namespace

Limits read_limits(const Document& document, Faults& faults) {
  TableReader root(document.file, &document.root, {}, faults);
  Limits limits;
  limits.most_new_drills = static_cast<int>(root.integer("most_new_drills", 0, 10));
  limits.warm_up_share_percent = static_cast<int>(root.integer("warm_up_share_percent", 1, 100));
  limits.contact_weight_thousandths = read_contact_weights(root);
  limits.sources = read_sources(root);
  const std::size_t before = faults.size();
  std::vector<TableReader> bands = read_tables(root, "ceilings", 1, kOldestAge - kYoungestAge + 1);
  for (TableReader& table : bands) limits.ceilings.push_back(read_band(table, limits.warm_up_share_percent));
  if (faults.size() == before) check_bands(limits.ceilings, bands);
  std::vector<TableReader> match = read_tables(root, "match", 1, kMostMatchDays);
  for (std::size_t i = 0; i < match.size(); ++i) limits.match.push_back(read_match(match[i], i));
  root.finish();
  return limits;
}

}  // namespace lanework::catalogue
