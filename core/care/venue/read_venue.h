// A venue file to its plan. Everything but the name may be absent: what a plan lacks is told by missing.h.
#pragma once

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/care/venue/venue_plan.h"

namespace lanework::care {

inline constexpr std::size_t kMostVenueLetters = 120;  // of a text: it has to be read out on the phone; own judgement

// Every fault is collected: an unknown key, a wrong type, a text that is too long.
Result<VenuePlan> read_venue(const Document& document);

}  // namespace lanework::care
