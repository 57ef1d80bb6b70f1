// Which drills, rungs and doses the planner may take: 'Candidates' of docs/model/session.md, written again.
#pragma once

#include <string>

#include "core/check/matter.h"
#include "core/check/selection.h"

namespace lanework::check {

// What would have been allowed, where this pick is not among what may enter tonight; empty when it is. Bars
// (barred.h) are judged apart.
std::string not_offered(const Pick& pick, const Matter& matter);

// Do the days to the match take anything off eccentric work?
bool eccentric_work_is_cut(const Matter& matter);

// Eccentric work, neither of the routine nor ever done, so close to a match that none of it may be new.
bool new_eccentric_too_late(const Drill& drill, const Matter& matter);

// Does a pick keep a pin of its drill?
bool keeps(const Pick& pick, const Pin& pin);

}  // namespace lanework::check
