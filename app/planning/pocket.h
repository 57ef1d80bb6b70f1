// What a coach's phone is given of one squad: its coming evenings as requests to the door, and the catalogue that they
// share. docs/formats/pocket.md. Nothing of a player but name, age and what to do.
#pragma once

#include <string>

#include "app/planning/squad_plan.h"
#include "core/base/date.h"
#include "core/base/result.h"

namespace lanework::planning {

// How far ahead.
struct Reach {
  int days;
  std::size_t evenings;
  bool emergency;  // with the contacts that families agreed to be on a phone
};
inline constexpr Reach kOnAPhone{14, 6, true};
inline constexpr Reach kAtTheDesk{70, 40, false};  // the longest block, and what begins after it

// {"evenings": [...], "catalogue": {...}, "action_plans": [...]}: the evenings from today on, and where the reach asks
// for it "emergency": [...], from the folder's emergency.csv where it has one (docs/formats/emergency.md). care: what
// is known of the squad's players, ledger::care_document of it. standing: the text of the plan that stands, or empty;
// then the house routine is what is changed tonight. Faults: of the folder, no such squad.
Result<Node> pocket_of(const PlanningFiles& files, const std::string& squad, const Node& care, Date today,
                       const std::string& standing, Reach reach = kOnAPhone);

// {"catalogue": the shipped one and the drills of the club's own that some squad has, as the door takes it, "own":
// their ids, "routines": the shipped house routines as documents}. A folder without a club.toml has none of its own.
// Faults: of the folder.
Result<Node> catalogue_of(const PlanningFiles& files);

}  // namespace lanework::planning
