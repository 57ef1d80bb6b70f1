// The best session for a slot: the smallest change from the house routine that the evening demands, with
// the reasons, or the demands that conflict and the cheapest way out. Maths: docs/model/session.md.
#pragma once

#include <optional>
#include <string>
#include <variant>
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

// The cheapest cure of a family that is not covered: so much more time, or what keeps it out. Drills by position in the
// catalogue, here and below.
struct MoreTime {
  Seconds seconds;
};
struct NoneCanBeDone {
  int drill;                            // one of the family
  std::optional<session::Bar> because;  // of that one
};
struct NobodyWasTaught {
  int most_new;  // drills that may be new tonight
};
struct CeilingsOrPins {};
using Cure = std::variant<MoreTime, NoneCanBeDone, NobodyWasTaught, CeilingsOrPins>;

struct Uncovered {
  catalogue::Family family;
  Cure cure;
};

// A family that is covered then, or a drill that is nearer to the routine at that dose.
struct Gain {
  std::optional<catalogue::Family> covers;
  int drill = -1;
  int dose = 0;
};

// What more time would buy, found by solving again.
struct MinutePrice {
  int minutes;
  std::vector<Gain> buys;
};

struct CeilingDemand {
  Load load;
  int most;
  int age;
  bool match_in_sight;
};
struct PinDemand {
  int drill;
  int rung = -1;                    // where the pin on that rung is what cannot be had
  std::optional<session::Bar> bar;  // of a drill that cannot be done at all
};
struct SlotDemand {
  Seconds slot;
};
struct NoSession {
  std::string why;  // such as thunder, as the evening has it
};
using Demand = std::variant<CeilingDemand, PinDemand, SlotDemand, NoSession>;

// A slot that would do, pins to lift, or either.
struct WayOut {
  std::optional<Seconds> slot;
  std::vector<int> lift;         // drills
  bool any_one_of_them = false;  // one of 'lift' is enough
  bool barred = false;           // of drills that cannot be done at all
  bool another_day = false;      // or another place that is safe
};

struct Conflict {
  // Every pin of a drill that cannot be done tonight, each with its reason; or else a set none of which can be struck
  // without the rest becoming possible.
  std::vector<Demand> demands;
  std::vector<WayOut> ways_out;  // each is needed, one after the other; confirmed by solving again
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
