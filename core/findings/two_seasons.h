// Two seasons of a club, the one before and the one after a change: rates beside each other, like with like, and as if
// the second had had the first's make-up. What was recorded may have changed with what happened; nothing here is cause.
#pragma once

#include <string>
#include <vector>

#include "core/evidence/standardised.h"
#include "core/findings/stratified_comparison.h"
#include "core/records/terms.h"

namespace lanework::findings {

// Injuries whose setting nobody knows count in no setting.
struct SeasonsRow {
  std::string label;
  evidence::Exposed before;
  evidence::Exposed after;
  // After by before. Of meaning where both have hours, the ratio where both have injuries too.
  double ratio = 0;
  evidence::Tested exact;
  evidence::Difference difference;  // after less before, per hour

  [[nodiscard]] bool has_hours() const { return before.hours > 0 && after.hours > 0; }
};

struct SeasonsStandardised {
  double before = 0;  // per hour, of the strata that both seasons have
  evidence::Standardised after;
  double share_of_hours = 0;  // of the first season's hours that these strata hold
};

struct TwoSeasons {
  SeasonsRow whole;
  std::vector<SeasonsRow> settings;
  std::vector<SeasonsRow> ages;
  bool by_setting = false;  // strata are of age bands and settings, else of age bands
  StratifiedComparison like_with_like;
  // Squads (by their id) with hours in both seasons, each against itself, by setting where settings are known.
  int squads_in_both = 0;
  int squads_before_only = 0;
  int squads_after_only = 0;
  StratifiedComparison within_squads;
  // After as if age bands and settings had the hours that they had before; empty where no stratum is in both.
  std::optional<SeasonsStandardised> standardised;
};

TwoSeasons two_seasons(const records::Season& before, const records::Season& after, const records::Terms& terms,
                       double level);

}  // namespace lanework::findings
