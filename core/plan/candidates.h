// Which drills may stand in tonight's session, and on which rungs and doses.
#pragma once

#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/session/evening.h"

namespace lanework::plan {

struct Candidate {
  int drill = 0;
  int routine_line = -1;
  bool pinned = false;
  std::vector<int> rungs;  // ascending; empty when barred
  std::vector<int> doses;  // ascending
};

// By position in the catalogue, ascending. Routine drills are always there, with no rungs when barred.
std::vector<Candidate> find_candidates(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
                                       const session::Evening& evening);

// Has the squad done it at all?
bool has_done(const session::Evening& evening, const catalogue::Drill& drill);

// Has the squad learnt it? Then harder rungs than the easiest may be offered where it stands in for another.
bool is_known(const session::Evening& evening, const catalogue::Drill& drill);

// Where the days to the match take anything off eccentric work, a drill of it that is not of the routine
// and that the squad has never done does not enter (lovell-2018).
bool new_eccentric_too_late(const catalogue::Catalogue& catalogue, const session::Evening& evening,
                            const catalogue::Drill& drill);

}  // namespace lanework::plan
