// What a coach's phone is given of one squad: its coming evenings as requests to the door, and the catalogue that they
// share. docs/formats/pocket.md. Nothing of a player but name, age and what to do.
#pragma once

#include <string>

#include "app/planning/squad_plan.h"
#include "core/base/date.h"
#include "core/base/result.h"

namespace lanework::planning {

inline constexpr int kMostPocketDays = 14;
inline constexpr std::size_t kMostPocketEvenings = 6;

// {"evenings": [...], "catalogue": {...}, "action_plans": [...]}: the evenings from today on. care: what is known of
// the squad's players, ledger::care_document of it. standing: the text of the plan that stands, or empty; then the
// house routine is what is changed tonight. Faults: of the folder, no such squad.
Result<Node> pocket_of(const PlanningFiles& files, const std::string& squad, const Node& care, Date today,
                       const std::string& standing);

}  // namespace lanework::planning
