// Reasons, cures, gains and ways out as the door tells them beside their sentences: a code and its values
// (docs/formats/door.md), with drills by id. Codes are stable; a newer program may have more.
#pragma once

#include "core/base/document.h"
#include "core/catalogue/catalogue.h"
#include "core/plan/plan_session.h"

namespace lanework::door {

// {"code": "lane-too-short", "metres": 15}
Node to_node(const session::Reason& reason, const catalogue::Catalogue& catalogue);
// {"code": "more-time", "seconds": 80}
Node to_node(const plan::Cure& cure, const catalogue::Catalogue& catalogue);
// {"code": "pinned", "drill": "wall-sit", "because": {"code": "needs", "need": "wall"}}
Node to_node(const plan::Demand& demand, const catalogue::Catalogue& catalogue);
// {"slot_seconds": 720, "lift": ["squat"], "any_one": true}
Node to_node(const plan::WayOut& way, const catalogue::Catalogue& catalogue);
// {"covers": "trunk"} or {"drill": "squat", "sets": 2, "amount": 10}
Node to_node(const plan::Gain& gain, const catalogue::Catalogue& catalogue);

}  // namespace lanework::door
