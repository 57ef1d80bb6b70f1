// A squad's evenings on paper, from the club's folder, the ledger and the plan that stands.
#pragma once

#include "app/planning/squad_plan.h"
#include "app/serve/house.h"

namespace lanework::cli {

// Faults: of the folder, and of an evening that cannot be drawn.
Result<serve::PagesMade> printed_pages(const planning::PlanningFiles& files, const serve::PagesAsked& asked,
                                       const Node& care, const std::string& standing);

}  // namespace lanework::cli
