// Is 'nothing can be done' plainly untrue? Tries a few sessions that are easy to find; finding none proves nothing.
#pragma once

#include "core/check/matter.h"
#include "core/check/selection.h"

namespace lanework::check {

// A session that breaks no rule, or an empty one.
Selection witness(const Matter& matter);

}  // namespace lanework::check
