// Can a model's parameters be estimated from these rows at all? What would make them run off to infinity, or be told
// only together, is found before the fit and said in words.
//
// Separation: counts have no finite best coefficient where some sum of columns is 0 in every row with events and of one
// sign elsewhere (Santos Silva JMC, Tenreyro S, Econ Lett 2010, doi 10.1016/j.econlet.2010.02.020; found by the
// iterated regression of Correia S, Guimaraes P, Zylkin T 2019, arXiv 1903.01633; both from memory).
#pragma once

#include <optional>
#include <string>

#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

// Empty where they can; otherwise why not and what to do, to stand after 'cannot be estimated: '.
// squads_differ: the model has an effect of the squad.
std::optional<std::string> why_not_estimable(const Frame& frame, bool squads_differ);

}  // namespace lanework::evidence
