// Some of the squads of a frame, whole, as a first look at all of them.
#pragma once

#include <cstddef>

#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

// One squad in so many, or where clubs are told one club in so many with all its squads. They are picked by steps of
// the golden section, so that a pattern in how squads stand in their clubs is not met by one of the picks'.
Frame share_of_squads(const Frame& frame, std::size_t one_in);

}  // namespace lanework::evidence
