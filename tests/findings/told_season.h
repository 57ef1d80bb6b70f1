// What was found of a season, made up in a test to have sentences about it.
#pragma once

#include <utility>

#include "core/findings/claims.h"

namespace lanework::findings {

inline RateRow row(int injuries, double hours) {
  RateRow out;
  out.label = "all";
  out.injuries = injuries;
  out.hours = hours;
  return out;
}

inline SeasonFindings quiet_season() {
  SeasonFindings found;
  RateRow all = row(40, 10000);
  all.limits = {0.0029, 0.0054};
  all.days = 400;
  all.median_days = 6;
  found.whole.rows = {all};
  found.severity = {{{"no day", "-"}, 4, 0}, {{"a few", "-"}, 20, 0}, {{"more", "-"}, 10, 0}, {{"most", "-"}, 6, 0}};
  found.reach.squads.resize(2);
  found.reach.squads[0].sessions = {30, 5, 2, 8, 5};
  found.reach.squads[0].warm_ups_a_week = 1.8;
  found.completeness.weeks = {{38, 40, {}}, {36, 40, {}}};
  found.warm_ups.events = 40;
  found.warm_ups.times = 0.8;
  found.warm_ups.limits = {0.6, 1.1};
  found.hours_wanted = HoursWanted{24000, 14000, 2.4};
  return found;
}

inline OftenOrNot often_of(double times, const evidence::Interval& limits) {
  OftenOrNot out;
  out.by_setting = true;
  out.compared.one = {20, 5000};
  out.compared.other = {20, 5000};
  out.compared.ratio = evidence::Pooled{times, 0.1, limits};
  out.compared.ratio_by_squads = evidence::LeftOut{0.1, 10, limits};
  out.hours_a_squad_season = 1250;
  out.needed = evidence::needed_to_treat(0.5, {0.2, 0.8});
  return out;
}

inline TaughtCoaches taught_of(double difference, const evidence::Interval& limits) {
  TaughtCoaches out;
  out.taught = {12, 1.9, 12, 0.7};
  out.not_taught = {8, 1.9 - difference, 8, 0.6};
  out.a_week = evidence::MeanDifference{difference, 0.2, 15, limits};
  return out;
}

inline Prevalence prevalence_of(std::int64_t days_out, int players_out) {
  Prevalence out;
  out.season = {Date{20000}, days_out, 10000, {}};
  if (days_out > 0) out.season.limits = evidence::Interval{0.011, 0.034};
  out.weeks = {{Date{20001}, days_out / 4, 5000, {}}, {Date{20008}, days_out - days_out / 4, 5000, {}}};
  out.players = 345;
  out.players_out = players_out;
  out.listed = true;
  return out;
}

inline RateTable histories_of(int first, int recurrent, int other) {
  RateTable out{GroupBy::kHistory, true, {}};
  for (const auto& [label, injuries] :
       {std::pair(kFirstInjury, first), {kRecurrent, recurrent}, {kOtherLater, other}}) {
    RateRow one = row(injuries, 10000);
    one.label = label.in(Language::kEnglish);
    out.rows.push_back(one);
  }
  return out;
}

}  // namespace lanework::findings
