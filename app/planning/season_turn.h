// The turn of a season for the desk: what the folder would become (core/club/turn.h), as a list of changes that the
// lead looks over, amends and hands to change_club; and what it was, for taking it back. Nothing is written here.
#pragma once

#include "app/planning/squad_plan.h"

namespace lanework::planning {

// {"season": {"from", "to"}, "first_monday", "squads": [{"squad", "name", "label", "was"}], "ends": [{"squad",
// "name"}], "players": [{"player", "name", "age", "from", "to"}], "told": [sentences], "changes": [{"path",
// "instead_of", "text"}], "back": [{"path", "text"}]}; docs/model/season_turn.md. Faults: of the folder as it is.
Result<Node> season_turn(const PlanningFiles& files);

}  // namespace lanework::planning
