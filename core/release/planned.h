// Evenings that the club's calendar has, and of how many of them nobody told: what squads did, nobody's body.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/ledger/fold.h"
#include "core/release/period.h"

namespace lanework::release {

struct Planned {
  std::int64_t evenings = 0;
  std::int64_t untold = 0;  // of those: nothing at all was entered about them
  bool operator==(const Planned&) const = default;
};
using PlannedBySquad = std::map<std::string, Planned>;

// Of the period's days that lie in none of the others. evenings: of any days and squads. An evening counts as told by
// its squad and day, whenever it began: of two evenings of a day and one that was told of, one is untold.
PlannedBySquad planned_of(const ledger::State& state, const std::vector<ledger::SessionKey>& evenings,
                          const Period& period, const std::vector<Period>& without);

PlannedBySquad together(const PlannedBySquad& one, const PlannedBySquad& other);

Planned of_all(const PlannedBySquad& squads);

}  // namespace lanework::release
