// The reasons of a plan: what was changed and why, what is not covered and its cheapest cure, what more
// minutes would buy. Every 'why' is found by solving again without the suspected cause.
#pragma once

#include "core/plan/plan_session.h"

namespace lanework::plan {

// Fills session.changes, uncovered and prices. REQUIRES: plan.outcome is optimal.
void explain(Plan& plan, const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
             const session::Evening& evening, KernelWorkspace& workspace);

}  // namespace lanework::plan
