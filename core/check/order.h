// 'Canonical order' of docs/model/session.md.
#pragma once

#include <vector>

#include "core/check/check_session.h"
#include "core/check/matter.h"
#include "core/check/selection.h"

namespace lanework::check {

// May the first stand before the second?
bool stands_before(const Drill& first, const Drill& second, const Matter& matter);

// 'order' for every drill that stands behind one it should precede, 'family-split' where a family of a phase
// starts again after another.
void judge_order(const Selection& selection, const Matter& matter, std::vector<Violation>& violations);

}  // namespace lanework::check
