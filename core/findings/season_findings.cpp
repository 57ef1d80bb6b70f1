#include "core/findings/season_findings.h"

#include <algorithm>
#include <cmath>

#include "core/evidence/power.h"
#include "core/evidence/shrunken_rates.h"

namespace lanework::findings {
namespace {

constexpr int kWatchParts = 20;
constexpr int kMostWatchDecision = 4000;
constexpr double kChangeWatched = 2;  // times the usual rate
constexpr double kFalseAlarmsASeason = 0.5;
constexpr double kEffectWanted = 2.0 / 3;

std::vector<evidence::Exposed> squad_counts(const records::Season& season) {
  std::vector<evidence::Exposed> out(season.squads.size());
  for (const records::Exposure& exposure : season.exposures)
    out[exposure.squad].hours += static_cast<double>(exposure.hours.count) / 60;
  for (const records::InjuryEvent& event : records::events_of(season.injuries))
    ++out[season.injuries[event.diagnoses.front()].squad].events;
  return out;
}

std::optional<SquadFindings> squad_findings(const records::Season& season, double level) {
  const std::vector<evidence::Exposed> counts = squad_counts(season);
  SquadFindings out;
  std::vector<evidence::SquadCount> by_hours;
  double events = 0;
  double hours = 0;
  for (std::size_t squad = 0; squad < counts.size(); ++squad) {
    if (counts[squad].hours <= 0) continue;
    SquadFinding& found = out.squads.emplace_back();
    found.squad = squad;
    found.injuries = static_cast<int>(counts[squad].events);
    found.hours = counts[squad].hours;
    by_hours.push_back({counts[squad].events, counts[squad].hours});
    events += static_cast<double>(counts[squad].events);
    hours += counts[squad].hours;
  }
  if (out.squads.size() < 2 || events == 0) return {};
  out.prior = evidence::fit_gamma_prior(by_hours);
  const std::vector<evidence::Shrunken> drawn_in = evidence::shrunken_rates(by_hours, level);
  std::vector<evidence::SquadCount> by_expected;
  for (SquadFinding& squad : out.squads) {
    squad.expected = events / hours * squad.hours;
    by_expected.push_back({squad.injuries, squad.expected});
  }
  out.dispersion = evidence::over_dispersion(by_expected);
  for (std::size_t i = 0; i < out.squads.size(); ++i) {
    SquadFinding& squad = out.squads[i];
    const auto limit = [&](double share) { return evidence::widened_limit(squad.expected, share, out.dispersion); };
    squad.drawn_in = drawn_in[i];
    squad.inner = {limit(0.025), limit(0.975)};
    squad.outer = {limit(0.001), limit(0.999)};
  }
  return out;
}

std::optional<Compared> compare(const RateTable& settings, double level) {
  if (!settings.rates_stand) return {};
  Compared out;
  bool training = false;
  bool match = false;
  for (const RateRow& row : settings.rows) {
    if (row.hours <= 0) continue;
    (row.label == settings.rows.front().label ? training : match) = true;
    (row.label == settings.rows.front().label ? out.other : out.one) = {row.injuries, row.hours};
  }
  if (!training || !match || out.one.events + out.other.events == 0) return {};
  out.ratio = evidence::rate_ratio(out.one, out.other);
  out.exact = evidence::exact_ratio(out.one, out.other, level);
  return out;
}

// Rows of training and match alone, so that the first is training.
RateTable known_settings(const RateTable& settings, const records::Terms& terms) {
  RateTable out = settings;
  out.rows.clear();
  for (const records::Term& term : terms.of(records::Field::kSetting)) {
    for (const RateRow& row : settings.rows)
      if (row.label == term.in(settings.language)) out.rows.push_back(row);
  }
  return out;
}

std::vector<SeasonWeek> season_weeks(const records::Season& season, const records::WeekTable& weeks) {
  std::vector<SeasonWeek> out(weeks.weeks());
  for (std::size_t week = 0; week < out.size(); ++week) {
    out[week].monday = records::monday_of(season.period, static_cast<int>(week));
    for (std::size_t squad = 0; squad < season.squads.size(); ++squad) {
      const auto hours = [&](records::Setting setting) {
        return static_cast<double>(weeks.at(squad, week, setting).hours.count) / 60;
      };
      out[week].training_hours += hours(records::Setting::kTraining);
      out[week].match_hours += hours(records::Setting::kMatch);
    }
  }
  for (const records::InjuryEvent& event : records::events_of(season.injuries)) {
    const int week = records::week_of(season.period, season.injuries[event.diagnoses.front()].date);
    ++out[static_cast<std::size_t>(week)].injuries;
  }
  return out;
}

std::optional<WatchedSeason> watch(const std::vector<SeasonWeek>& weeks, double usual_rate) {
  std::vector<evidence::Counted> counts;
  std::vector<double> hours;
  for (const SeasonWeek& week : weeks) {
    hours.push_back(week.training_hours + week.match_hours);
    counts.push_back({week.injuries, hours.back()});
  }
  WatchedSeason out;
  out.plan = {usual_rate, kChangeWatched * usual_rate, kWatchParts, 1};
  out.plan.decision = evidence::decision_for_alarms(out.plan, hours, kFalseAlarmsASeason, kMostWatchDecision);
  if (out.plan.decision > kMostWatchDecision) return {};
  out.weeks = evidence::watch_weeks(out.plan, counts);
  out.false_alarms = evidence::alarms_expected(out.plan, hours, usual_rate);
  return out;
}

// Events that a third fewer would show in, were half of the hours with warm-ups, times what clustering costs.
std::optional<HoursWanted> hours_wanted(const SeasonFindings& found) {
  const RateRow& all = found.whole.rows.front();
  if (all.injuries == 0 || all.hours <= 0) return {};
  const double factor = found.squads ? std::max(1.0, found.squads->dispersion.factor) : 1;
  const double events = evidence::events_needed(kEffectWanted, 0.5, {found.asked.level, 0.8}) * factor;
  HoursWanted out;
  out.in_all = events / all.per_hour();
  out.more = std::max(0.0, out.in_all - all.hours);
  out.seasons = out.in_all / all.hours;
  return out;
}

}  // namespace

SeasonFindings find_all(const records::ReadSeason& read, const records::Terms& terms, const FindingsAsked& asked) {
  const records::Season& season = read.season;
  const records::WeekTable weeks = records::hours_by_week(season);
  SeasonFindings out;
  out.asked = asked;
  out.period = season.period;
  out.completeness = records::completeness(read, asked.language);
  const auto by = [&](GroupBy group) { return rate_table(season, terms, group, {asked.level, asked.language}); };
  out.whole = by(GroupBy::kWhole);
  if (out.whole.rows.empty()) out.whole.rows.emplace_back().label = Speaker(asked.language).say(kAll);
  out.settings = by(GroupBy::kSetting);
  out.ages = by(GroupBy::kAgeBand);
  out.sexes = by(GroupBy::kSex);
  out.regions = by(GroupBy::kRegion);
  out.tissues = by(GroupBy::kTissue);
  out.onsets = by(GroupBy::kOnset);
  out.contacts = by(GroupBy::kContact);
  out.recurrences = by(GroupBy::kRecurrence);
  out.histories = by(GroupBy::kHistory);
  out.recurrent = recurrent_share(out.histories, asked.level);
  out.severity = severity_table(season);
  out.prevalence = prevalence(season, asked.level);
  out.matches_by_training = compare(known_settings(out.settings, terms), asked.level);
  out.squads = squad_findings(season, asked.level);
  out.reach = reach_of_warm_ups(season, weeks);
  out.taught = taught_coaches(season, weeks, asked.level);
  out.warm_ups = warm_up_model(season, weeks, asked.level, asked.language);
  out.often = often_or_not(season, weeks, asked.level);
  out.hours_wanted = hours_wanted(out);
  out.weeks = season_weeks(season, weeks);
  if (asked.usual_rate) out.watched = watch(out.weeks, *asked.usual_rate);
  return out;
}

}  // namespace lanework::findings
