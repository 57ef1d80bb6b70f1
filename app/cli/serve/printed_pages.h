// A squad's evenings on paper and in a calendar, from the club's folder, the ledger and the plan that stands.
#pragma once

#include "app/planning/squad_plan.h"
#include "app/serve/house.h"

namespace lanework::cli {

// Faults of its functions: of the folder, and of what cannot be drawn.
serve::Printed printed_from(const planning::PlanningFiles& files);

}  // namespace lanework::cli
