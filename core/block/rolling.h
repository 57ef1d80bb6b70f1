// What a block that has begun is planned on from: the plan that stands, and what became of it so far.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/units.h"
#include "core/block/past_session.h"

namespace lanework::block {

struct StandingSession {
  Date date;
  TimeOfDay start;
  Seconds slot{};
  int turnout = 0;
  std::optional<int> days_to_match;
  bool match_day = false;
  std::optional<int> budget;  // steps; empty on a match day
  std::vector<PlannedItem> items;
};

// The plan before this day, as its answer says.
struct Standing {
  std::vector<std::vector<int>> sets;  // by spell: drills of the catalogue
  std::vector<StandingSession> sessions;
  std::vector<std::vector<int>> credits;  // [week][family], as that plan counted them
  std::vector<std::vector<int>> targets;  // [week][family], likewise

  [[nodiscard]] const StandingSession* find(Date date, TimeOfDay start) const;
};

struct Rolling {
  Date today;
  Standing standing;
  std::vector<PastSession> past;  // the first evenings of the outline
};

}  // namespace lanework::block
