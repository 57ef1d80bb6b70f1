// Squads' weeks after about two or more warm-ups a week lately against those after fewer: rates, like with like, and
// how many squads' seasons go with one injury fewer. 'Lately' is the model's (reach.h); it is described, not caused.
#pragma once

#include <optional>

#include "core/evidence/clustered_ratio.h"
#include "core/evidence/needed_to_treat.h"
#include "core/findings/stratified_comparison.h"
#include "core/records/week_hours.h"

namespace lanework::findings {

// Warm-ups a week lately from which a squad's week counts as one after 'about two or more': own judgement.
inline constexpr double kOftenAWeek = 1.5;

// Squads that were in one arm with all of their hours, squads counted as squads; ages and settings are thrown together.
struct WholeSquads {
  int often = 0;
  int seldom = 0;
  // Empty with fewer than two squads or no injury in an arm.
  std::optional<evidence::ClusteredRatio> ratio;
};

struct OftenOrNot {
  StratifiedComparison compared;  // one: after often; other: after seldom
  bool by_setting = false;        // strata are of age bands and settings, else of age bands
  int weeks_often = 0;            // squads' weeks with hours
  int weeks_seldom = 0;
  int weeks_unknown = 0;             // nobody knows what was done; left out
  std::int64_t events_left_out = 0;  // in such weeks, in weeks without hours, or of no known setting
  WholeSquads whole_squads;
  double hours_a_squad_season = 0;  // what a squad had on the average
  // Squads' seasons for one injury fewer; empty where the difference has no limits.
  std::optional<evidence::NeededToTreat> needed;
};

OftenOrNot often_or_not(const records::Season& season, const records::WeekTable& weeks, double level);

}  // namespace lanework::findings
