// The best session for a slot: the smallest change from the house routine that the evening demands, with
// the reasons, or the demands that conflict and the cheapest way out. Maths: docs/model/session.md.
#pragma once

#include <string>
#include <vector>

#include "core/catalogue/catalogue.h"
#include "core/catalogue/routine.h"
#include "core/plan/problem.h"
#include "core/plan/solve.h"
#include "core/session/evening.h"
#include "core/session/session.h"

namespace lanework::plan {

// The answer's status; not a failure of the call.
enum class Outcome { kOptimal, kInfeasible };

struct Uncovered {
  catalogue::Family family;
  std::string cure;  // the cheapest: 'with 1 min 20 s more', or what would have to be there
};

// What more time would buy, found by solving again.
struct MinutePrice {
  int minutes;
  std::string buys;
};

struct Conflict {
  // Every pin of a drill that cannot be done tonight, each with its reason; or else a set none of which can be struck
  // without the rest becoming possible.
  std::vector<std::string> demands;
  std::string way_out;  // confirmed by solving again
};

struct Plan {
  Outcome outcome = Outcome::kInfeasible;
  session::Session session;  // empty when infeasible
  Seconds margin{};          // kept free so that nine sessions in ten end in the slot
  int redos = 0;             // times the margin was set anew, at most three
  Problem problem;           // as solved last: what is exported and checked
  Solution solution;         // of that problem, when optimal
  std::vector<Uncovered> uncovered;
  std::vector<MinutePrice> prices;
  Conflict conflict;  // when infeasible
};

Plan plan_session(const catalogue::Catalogue& catalogue, const catalogue::Routine& routine,
                  const session::Evening& evening, KernelWorkspace& workspace);

}  // namespace lanework::plan
