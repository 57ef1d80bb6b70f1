// From an evening, a catalogue and a house routine to the session problem. Which drills enter, at which
// rungs and doses, is decided here; docs/model/session.md says why.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/plan/problem.h"
#include "core/session/evening.h"

namespace lanework::plan {

// budget: seconds from the start of the session to its planned end, gathering included. It may be less
// than the gathering takes; then nothing is feasible.
Problem build_problem(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
                      const session::Evening& evening, Seconds budget);

}  // namespace lanework::plan
