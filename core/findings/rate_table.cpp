#include "core/findings/rate_table.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/evidence/poisson_limits.h"
#include "core/evidence/rate_ratio.h"

namespace lanework::findings {
namespace {

using records::Field;
using records::InjuryRecord;
using records::Season;
using records::Terms;

constexpr Words kNotKnown{"not known", "no se sabe"};

// What groups are called.
struct Labels {
  const Terms& terms;
  Language language;

  [[nodiscard]] std::string of(const Words& words) const { return std::string(words.in(language)); }
};

struct Group {
  std::string label;
  double hours = 0;
  std::vector<evidence::DaysLost> injuries;
};

// Groups in the order of their keys; 'not known' has the last.
using Groups = std::map<std::size_t, Group>;
constexpr std::size_t kLast = static_cast<std::size_t>(-1);

double in_hours(records::PlayerMinutes minutes) { return static_cast<double>(minutes.count) / 60; }

bool is_of_diagnoses(GroupBy by) { return by >= GroupBy::kRegion; }

template <class Value>
std::pair<std::size_t, std::string> named(const Labels& labels, Field field, const std::optional<Value>& value) {
  if (!value) return {kLast, labels.of(kNotKnown)};
  return {static_cast<std::size_t>(*value), labels.terms.term(field, *value).in(labels.language)};
}

std::pair<std::size_t, std::string> history_of(const InjuryRecord& injury, const Labels& labels) {
  if (!injury.recurrence) return {kLast, labels.of(kNotKnown)};
  switch (*injury.recurrence) {
    case records::Recurrence::kFirst:
      return {0, labels.of(kFirstInjury)};
    case records::Recurrence::kReInjury:
    case records::Recurrence::kExacerbation:
      return {1, labels.of(kRecurrent)};
    default:
      return {2, labels.of(kOtherLater)};
  }
}

std::pair<std::size_t, std::string> group_of(const InjuryRecord& injury, const Labels& labels, GroupBy by) {
  switch (by) {
    case GroupBy::kSetting:
      return named(labels, Field::kSetting, injury.setting);
    case GroupBy::kRegion:
      return named(labels, Field::kRegion, injury.region);
    case GroupBy::kTissue:
      return named(labels, Field::kTissue, injury.tissue);
    case GroupBy::kOnset:
      return named(labels, Field::kOnset, injury.onset);
    case GroupBy::kContact:
      return named(labels, Field::kContact, injury.contact);
    case GroupBy::kRecurrence:
      return named(labels, Field::kRecurrence, injury.recurrence);
    case GroupBy::kHistory:
      return history_of(injury, labels);
    default:
      return {0, labels.of(kAll)};
  }
}

// Of squads; ages in their own order.
std::pair<std::size_t, std::string> group_of(const Season& season, const Labels& labels, std::size_t squad,
                                             GroupBy by) {
  const records::SquadRecord& record = season.squads[squad];
  if (by == GroupBy::kSquad) return {squad, record.shown()};
  if (by == GroupBy::kSex) return named(labels, Field::kSex, record.sex);
  if (by != GroupBy::kAgeBand) return {0, labels.of(kAll)};
  if (record.age_band.empty()) return {kLast, labels.of(kNotKnown)};
  const std::vector<std::string> bands = season.age_bands();
  return {static_cast<std::size_t>(std::find(bands.begin(), bands.end(), record.age_band) - bands.begin()),
          record.age_band};
}

Group& group(Groups& groups, const std::pair<std::size_t, std::string>& key) {
  Group& out = groups[key.first];
  out.label = key.second;
  return out;
}

void add_hours(const Season& season, const Labels& labels, GroupBy by, Groups& groups) {
  for (const records::Exposure& exposure : season.exposures) {
    const auto key = by == GroupBy::kSetting
                         ? named(labels, Field::kSetting, std::optional<records::Setting>(exposure.setting))
                         : group_of(season, labels, exposure.squad, by);
    group(groups, key).hours += in_hours(exposure.hours);
  }
}

void add_events(const Season& season, const Labels& labels, GroupBy by, Groups& groups) {
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    const InjuryRecord& first = season.injuries[event.diagnoses.front()];
    const auto key = by == GroupBy::kSetting ? group_of(first, labels, by) : group_of(season, labels, first.squad, by);
    group(groups, key).injuries.push_back(records::time_loss(season, event));
  }
}

double all_hours(const Season& season) {
  double sum = 0;
  for (const records::Exposure& exposure : season.exposures) sum += in_hours(exposure.hours);
  return sum;
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  std::sort(values.begin(), values.end());
  const std::size_t middle = values.size() / 2;
  return values.size() % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
}

RateRow row_of(const Group& group, double level) {
  RateRow row;
  row.label = group.label;
  row.injuries = static_cast<int>(group.injuries.size());
  row.hours = group.hours;
  std::vector<double> days;
  for (const evidence::DaysLost& lost : group.injuries) {
    days.push_back(lost.days);
    row.days += lost.days;
    row.open += lost.open ? 1 : 0;
  }
  row.median_days = median(days);
  if (row.hours <= 0) return row;
  const evidence::Interval counts = evidence::exact_limits(row.injuries, level);
  row.limits = {counts.low / row.hours, counts.high / row.hours};
  row.burden = evidence::burden(days, row.hours, level);
  return row;
}

}  // namespace

RateTable rate_table(const Season& season, const Terms& terms, GroupBy by, const RatesAsked& asked) {
  const Labels labels{terms, asked.language};
  Groups groups;
  if (is_of_diagnoses(by)) {
    for (const InjuryRecord& injury : season.injuries)
      group(groups, group_of(injury, labels, by)).injuries.push_back(records::time_loss(injury, season.period.as_of));
    const double hours = all_hours(season);
    for (auto& [key, one] : groups) one.hours = hours;
  } else {
    add_hours(season, labels, by, groups);
    add_events(season, labels, by, groups);
  }
  RateTable out;
  out.by = by;
  out.language = asked.language;
  out.of_diagnoses = is_of_diagnoses(by);
  for (const auto& [key, one] : groups) {
    out.rows.push_back(row_of(one, asked.level));
    out.injuries += out.rows.back().injuries;
    if (key == kLast) out.unknown = out.rows.back().injuries;
  }
  out.rates_stand = out.unknown <= kMostUnknownShare * out.injuries;
  return out;
}

std::optional<RecurrentShare> recurrent_share(const RateTable& histories, double level) {
  RecurrentShare out;
  for (const RateRow& row : histories.rows) {
    if (row.label == kRecurrent.in(histories.language)) out.recurrent = row.injuries;
    if (row.label != kNotKnown.in(histories.language)) out.known += row.injuries;
  }
  if (out.known == 0) return {};
  // Given their sum, one count beside another in the same hours is binomial: odds to a share.
  const evidence::Interval odds =
      evidence::exact_ratio({out.recurrent, 1}, {out.known - out.recurrent, 1}, level).limits;
  const auto share = [](double ratio) { return std::isfinite(ratio) ? ratio / (1 + ratio) : 1; };
  out.limits = {share(odds.low), share(odds.high)};
  return out;
}

std::vector<SeverityRow> severity_table(const Season& season) {
  std::vector<SeverityRow> out = {{{"no day", "ningún día"}, 0, 0},
                                  {{"1 to 7 days", "1 a 7 días"}, 0, 0},
                                  {{"8 to 28 days", "8 a 28 días"}, 0, 0},
                                  {{"more than 28 days", "más de 28 días"}, 0, 0}};
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    const evidence::DaysLost lost = records::time_loss(season, event);
    SeverityRow& row = out[static_cast<std::size_t>(evidence::severity_band(lost.days))];
    ++row.injuries;
    row.open += lost.open ? 1 : 0;
  }
  return out;
}

}  // namespace lanework::findings
