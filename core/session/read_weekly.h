// The standing keys of a squad file (docs/formats/club.md) to Weekly.
#pragma once

#include "core/base/document.h"
#include "core/catalogue/catalogue.h"
#include "core/session/weekly.h"

namespace lanework::session {

// root: the squad file. Reads week, match, matches, away_days, match_day_routine, expected_turnout, free_composition,
// locks and rung; faults go to root's list. Slots that overlap are left in: only the club's check tells them, one
// evening does not care.
Weekly read_weekly(TableReader& root, const catalogue::Catalogue& catalogue);

}  // namespace lanework::session
