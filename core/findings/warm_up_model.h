// Do weeks after more warm-ups have fewer injuries? A Poisson model of a squad's weeks: injuries by hours, on the
// warm-ups a week that it has lately done, its age band, the share of match hours and the time of the season, with an
// effect of each squad's own; negative binomial where counts vary more than by chance.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/two_languages.h"
#include "core/evidence/mixed/count_model.h"
#include "core/evidence/mixed/term_curve.h"
#include "core/records/season.h"
#include "core/records/week_hours.h"

namespace lanework::findings {

struct Averted {
  double injuries = 0;  // fewer than with no warm-ups, if what goes together were cause and effect; below 0: more
  evidence::Interval limits;
};

struct WarmUpModel {
  // Why there is none, in words after 'cannot be estimated: '; then the rest is empty.
  std::optional<std::string> why_not;
  bool negative_binomial = false;
  std::vector<std::string> left_out;  // terms that could not be told apart here, in words
  int rows = 0;                       // squad-weeks
  int rows_unknown = 0;               // left out: nobody knows whether warm-ups were done
  int events = 0;
  double hours = 0;
  double mean_warm_ups = 0;  // a week, by hours
  // The rate after one warm-up a week more.
  double times = 1;
  evidence::Interval limits;
  double p = 1;
  std::optional<evidence::SpreadFound> squads;
  std::vector<evidence::CurvePoint> curve;  // against no warm-ups
  std::optional<Averted> averted;
};

// language: of why_not and left_out.
WarmUpModel warm_up_model(const records::Season& season, const records::WeekTable& weeks, double level,
                          Language language = Language::kEnglish);

}  // namespace lanework::findings
