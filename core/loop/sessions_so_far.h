// What was entered about a block's sessions, as rows that a plan goes on from. A spreadsheet is refused where it does
// not fit the calendar, since whoever wrote it can mend it; entries of phones stand as they are, so what does not fit
// is passed over and told.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/club/allocation.h"
#include "core/club/club.h"
#include "core/club/session_rows.h"
#include "core/ledger/fold.h"

namespace lanework::loop {

// Whether the plan that stands has that drill (an id) in that session of the squad (an index into Club::squads).
using WasPlanned = std::function<bool(std::size_t squad, Date date, TimeOfDay start, const std::string& drill)>;

struct SessionsSoFar {
  std::vector<club::SessionRow> rows;    // of sessions that somebody wrapped up, by squad, day and start
  std::vector<std::string> passed_over;  // one sentence each, in the same order
};

// Of the block's days up to 'today'. Other squads' and other days' entries are no matter here and are not told.
// O(sessions x slots of their squad).
SessionsSoFar sessions_so_far(const ledger::State& state, const club::Club& club, const club::Allocation& allocation,
                              Date today, const WasPlanned& was_planned);

}  // namespace lanework::loop
