#include "core/findings/two_seasons.h"

#include <algorithm>
#include <set>

#include "core/findings/rate_table.h"

namespace lanework::findings {
namespace {

using evidence::Exposed;
using evidence::Stratum;
using records::Season;

double in_hours(records::PlayerMinutes minutes) { return static_cast<double>(minutes.count) / 60; }

std::set<std::string> squads_with_hours(const Season& season) {
  std::set<std::string> out;
  for (const records::Exposure& exposure : season.exposures)
    if (exposure.hours.count > 0) out.insert(season.squads[exposure.squad].id);
  return out;
}

// What names a stratum, of a squad's record and a setting that may not be known.
using StratumOf = std::string (*)(const records::SquadRecord&, std::optional<records::Setting>);

std::string squad_stratum(const records::SquadRecord& squad, std::optional<records::Setting> setting) {
  if (!setting) return squad.id;
  return squad.id + (*setting == records::Setting::kMatch ? ", match" : ", training");
}

// One season's cells, into the arm of each stratum that 'arm' names.
void add_season(const Season& season, bool by_setting, StratumOf stratum, Exposed Stratum::*arm, ArmCells& cells) {
  const auto cell = [&](std::size_t squad, std::optional<records::Setting> setting) -> Exposed& {
    const records::SquadRecord& record = season.squads[squad];
    return cells[{record.id, stratum(record, by_setting ? setting : std::nullopt)}].*arm;
  };
  for (const records::Exposure& exposure : season.exposures)
    cell(exposure.squad, exposure.setting).hours += in_hours(exposure.hours);
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    const records::InjuryRecord& first = season.injuries[event.diagnoses.front()];
    if (by_setting && !first.setting) continue;
    ++cell(first.squad, first.setting).events;
  }
}

ArmCells cells_of(const Season& before, const Season& after, bool by_setting, StratumOf stratum) {
  ArmCells cells;
  add_season(after, by_setting, stratum, &Stratum::one, cells);
  add_season(before, by_setting, stratum, &Stratum::other, cells);
  return cells;
}

SeasonsRow row_of(std::string label, const Exposed& before, const Exposed& after, double level) {
  SeasonsRow row{std::move(label), before, after, 0, {}, {}};
  if (!row.has_hours()) return row;
  row.ratio = evidence::rate_ratio(after, before);
  row.exact = evidence::exact_ratio(after, before, level);
  row.difference = evidence::rate_difference(after, before, level);
  return row;
}

Exposed counts_of(const RateTable& table, const std::string& label) {
  for (const RateRow& row : table.rows)
    if (row.label == label) return {row.injuries, row.hours};
  return {};
}

std::vector<SeasonsRow> rows_by(const Season& before, const Season& after, const records::Terms& terms, GroupBy by,
                                double level) {
  const RateTable first = rate_table(before, terms, by, {level});
  const RateTable second = rate_table(after, terms, by, {level});
  std::vector<std::string> labels;
  for (const RateTable* table : {&first, &second})
    for (const RateRow& row : table->rows)
      if (std::find(labels.begin(), labels.end(), row.label) == labels.end()) labels.push_back(row.label);
  if (by == GroupBy::kAgeBand) {
    std::stable_sort(labels.begin(), labels.end(), [](const std::string& a, const std::string& b) {
      return a.size() != b.size() ? a.size() < b.size() : a < b;
    });
  }
  std::vector<SeasonsRow> out;
  for (const std::string& label : labels)
    out.push_back(row_of(label, counts_of(first, label), counts_of(second, label), level));
  return out;
}

std::optional<SeasonsStandardised> standardised(const ArmCells& cells, double level) {
  std::map<std::string, Stratum> strata;
  double hours_before = 0;
  for (const auto& [key, counts] : cells) {
    Stratum& sum = strata[key.second];
    sum.one.events += counts.one.events;
    sum.one.hours += counts.one.hours;
    sum.other.events += counts.other.events;
    sum.other.hours += counts.other.hours;
    hours_before += counts.other.hours;
  }
  std::vector<evidence::StandardPart> parts;
  Exposed standard;
  for (const auto& [name, stratum] : strata) {
    if (stratum.one.hours <= 0 || stratum.other.hours <= 0) continue;
    parts.push_back({stratum.one.events, stratum.one.hours, stratum.other.hours});
    standard.events += stratum.other.events;
    standard.hours += stratum.other.hours;
  }
  if (parts.empty()) return {};
  return SeasonsStandardised{static_cast<double>(standard.events) / standard.hours,
                             evidence::standardised_rate(parts, level), standard.hours / hours_before};
}

Exposed whole_of(const Season& season) {
  Exposed out;
  for (const records::Exposure& exposure : season.exposures) out.hours += in_hours(exposure.hours);
  out.events = static_cast<std::int64_t>(records::events_of(season.injuries).size());
  return out;
}

}  // namespace

TwoSeasons two_seasons(const Season& before, const Season& after, const records::Terms& terms, double level) {
  TwoSeasons out;
  out.whole = row_of("all", whole_of(before), whole_of(after), level);
  out.settings = rows_by(before, after, terms, GroupBy::kSetting, level);
  out.ages = rows_by(before, after, terms, GroupBy::kAgeBand, level);
  out.by_setting = settings_are_known(before) && settings_are_known(after);
  const ArmCells cells = cells_of(before, after, out.by_setting, stratum_name);
  out.like_with_like = compare_arms(cells, level);
  out.standardised = standardised(cells, level);
  const std::set<std::string> first = squads_with_hours(before);
  const std::set<std::string> second = squads_with_hours(after);
  ArmCells own = cells_of(before, after, out.by_setting, squad_stratum);
  std::erase_if(
      own, [&](const auto& cell) { return !first.contains(cell.first.first) || !second.contains(cell.first.first); });
  out.within_squads = compare_arms(own, level);
  for (const std::string& squad : first) (second.contains(squad) ? out.squads_in_both : out.squads_before_only) += 1;
  out.squads_after_only = static_cast<int>(second.size()) - out.squads_in_both;
  return out;
}

}  // namespace lanework::findings
