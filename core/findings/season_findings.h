// All that a season's records say, with its uncertainty: what a report, a board's page and a screen are made from.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/evidence/funnel.h"
#include "core/evidence/gamma_poisson.h"
#include "core/evidence/rate_ratio.h"
#include "core/evidence/weekly_watch.h"
#include "core/findings/often_or_not.h"
#include "core/findings/prevalence.h"
#include "core/findings/rate_table.h"
#include "core/findings/reach.h"
#include "core/findings/taught_coaches.h"
#include "core/findings/warm_up_model.h"
#include "core/records/completeness.h"

namespace lanework::findings {

struct FindingsAsked {
  double level = evidence::kUsualLevel;
  Language language = Language::kEnglish;  // of every label and sentence
  // Injuries an hour in other seasons, for watching; empty: weeks are not watched.
  std::optional<double> usual_rate;
};

struct SquadFinding {
  std::size_t squad = 0;
  int injuries = 0;
  double hours = 0;
  double expected = 0;  // at the club's rate
  evidence::Shrunken drawn_in;
  evidence::Interval inner;  // of the funnel, as a ratio to what was expected
  evidence::Interval outer;
};

// Squads side by side; empty where there are fewer than two with hours, or no injury.
struct SquadFindings {
  evidence::GammaPrior prior;
  evidence::OverDispersion dispersion;
  std::vector<SquadFinding> squads;
};

struct Compared {
  evidence::Exposed one;
  evidence::Exposed other;
  double ratio = 0;
  evidence::Tested exact;
};

struct WatchedSeason {
  evidence::WatchPlan plan;
  std::vector<evidence::WatchedWeek> weeks;
  double false_alarms = 0;  // to be expected by chance alone
};

// How many hours more it would take until a third fewer injuries showed.
struct HoursWanted {
  double in_all = 0;
  double more = 0;     // than there were
  double seasons = 0;  // like this one, in all
};

struct SeasonWeek {
  Date monday;
  double training_hours = 0;
  double match_hours = 0;
  int injuries = 0;
};

struct SeasonFindings {
  FindingsAsked asked;
  records::Period period;
  records::Completeness completeness;
  RateTable whole;
  RateTable settings;
  RateTable ages;
  RateTable sexes;
  RateTable regions;
  RateTable tissues;
  RateTable onsets;
  RateTable contacts;
  RateTable recurrences;
  RateTable histories;
  std::optional<RecurrentShare> recurrent;
  std::vector<SeverityRow> severity;
  std::optional<Prevalence> prevalence;
  std::vector<SeasonWeek> weeks;
  std::optional<Compared> matches_by_training;
  std::optional<SquadFindings> squads;
  Reach reach;
  std::optional<TaughtCoaches> taught;
  WarmUpModel warm_ups;
  OftenOrNot often;
  std::optional<HoursWanted> hours_wanted;
  std::optional<WatchedSeason> watched;
};

// REQUIRES: records without faults.
SeasonFindings find_all(const records::ReadSeason& read, const records::Terms& terms, const FindingsAsked& asked);

}  // namespace lanework::findings
