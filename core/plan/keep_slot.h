// The best session of a problem that ends in its slot nine nights in ten: solved with a margin, the answer's own spread
// taken, and the margin set anew, at most three times (docs/model/session.md, 'The margin').
#pragma once

#include <optional>

#include "core/catalogue/catalogue.h"
#include "core/plan/problem.h"
#include "core/plan/solve.h"
#include "core/session/evening.h"
#include "core/session/session.h"

namespace lanework::plan {

struct KeptSlot {
  Solution solution;
  session::Session session;
  Seconds margin{};  // that the solution was found with
};

struct SlotSearch {
  std::optional<KeptSlot> kept;
  Seconds margin{};  // of 'kept', or the largest that was tried
  int redos = 0;
};

// The problem's own budget is not read: it follows from slot and margin. first_margin: where the search starts, that of
// the routine as far as it can be done here.
SlotSearch keep_slot(Problem problem, Seconds slot, Seconds first_margin, const catalogue::Catalogue& catalogue,
                     const session::Evening& evening, KernelWorkspace& workspace);

// Seconds for drills and the changes between them.
int budget_for(const Problem& problem, Seconds slot, Seconds margin);

// The items of a choice, laid out by the clock.
session::Session session_of(const Problem& problem, const Choice& choice, const catalogue::Catalogue& catalogue,
                            const session::Evening& evening);

}  // namespace lanework::plan
