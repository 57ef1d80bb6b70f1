// Can a model's parameters be estimated from these rows at all? What would make them run off to infinity, or be told
// only together, is found before the fit and said in words.
//
// Separation: counts have no finite best coefficient where some sum of columns is 0 in every row with events and of one
// sign elsewhere (Santos Silva JMC, Tenreyro S, Econ Lett 2010, doi 10.1016/j.econlet.2010.02.020; from memory). Found
// exactly, by least squares without negative shares over what no event says anything of: a few columns, so O(rows) a
// step and seldom more steps than columns.
#pragma once

#include <optional>
#include <string>

#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

// Empty where they can; otherwise why not and what to do, to stand after 'cannot be estimated: '.
// squads_differ: the model has an effect of the squad.
std::optional<std::string> why_not_estimable(const Frame& frame, bool squads_differ);

}  // namespace lanework::evidence
