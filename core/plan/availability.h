// What can be done here tonight: each rung of each drill against strip, kit, age, restrictions of the whole
// squad and the lead's bans.
#pragma once

#include <optional>

#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"
#include "core/session/reason.h"

namespace lanework::plan {

// Why a rung of a drill cannot be done tonight; empty when it can.
std::optional<session::Bar> barred_because(const catalogue::Drill& drill, int rung, const session::Evening& evening);

// Empty when some rung can be done, else the reason that bars the easiest one.
std::optional<session::Bar> barred_because(const catalogue::Drill& drill, const session::Evening& evening);

}  // namespace lanework::plan
