#include "core/release/planned.h"

#include <algorithm>
#include <utility>

namespace lanework::release {
namespace {

using Evening = std::pair<std::string, std::string>;  // squad and day

bool is_told(const ledger::SessionState& state) {
  return state.started || !state.drills.empty() || state.attendance || state.wrap_up || state.confirmed ||
         !state.visits.empty();
}

}  // namespace

PlannedBySquad planned_of(const ledger::State& state, const std::vector<ledger::SessionKey>& evenings,
                          const Period& period, const std::vector<Period>& without) {
  std::map<Evening, std::int64_t> planned;
  for (const ledger::SessionKey& key : evenings) {
    const auto day = parse_iso_date(key.day);
    const bool counts =
        day && holds(period, *day) &&
        std::none_of(without.begin(), without.end(), [&](const Period& one) { return holds(one, *day); });
    if (counts) ++planned[{key.squad, key.day}];
  }
  std::map<Evening, std::int64_t> told;
  for (const auto& [key, session] : state.sessions) {
    if (is_told(session)) ++told[{key.squad, key.day}];
  }
  PlannedBySquad out;
  for (const auto& [evening, count] : planned) {
    const auto found = told.find(evening);
    Planned& squad = out[evening.first];
    squad.evenings += count;
    squad.untold += std::max<std::int64_t>(0, count - (found == told.end() ? 0 : found->second));
  }
  return out;
}

PlannedBySquad together(const PlannedBySquad& one, const PlannedBySquad& other) {
  PlannedBySquad out = one;
  for (const auto& [squad, planned] : other) {
    out[squad].evenings += planned.evenings;
    out[squad].untold += planned.untold;
  }
  return out;
}

Planned of_all(const PlannedBySquad& squads) {
  Planned out;
  for (const auto& [squad, planned] : squads) {
    out.evenings += planned.evenings;
    out.untold += planned.untold;
  }
  return out;
}

}  // namespace lanework::release
