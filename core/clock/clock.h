// The clock: how long a drill, a session takes for this squad on this strip. Maths: docs/model/clock.md.
// All functions are pure; times are whole milliseconds; the same input gives the same bytes natively and
// in WebAssembly.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"
#include "core/session/session.h"

namespace lanework::clock {

// Where the time of one drill goes, median, for the evening's turnout on its strip.
struct DrillTime {
  Milliseconds telling;     // explaining, shrunk by the squad's exposures
  Milliseconds doing;       // the drill itself, until the last player is done
  double log_spread = 0;    // standard deviation of the log of doing, from the simulated or stated spread
  int moving_permille = 0;  // of doing, the share of time a player works rather than waits, thousandths
  int waves = 1;            // spread drills done in turns when the area is too small
  Milliseconds hold_up;     // how much longer than doing half the evenings are: nobody overtakes the slowest
  [[nodiscard]] Milliseconds total() const { return telling + doing; }
};

// REQUIRES: drill, rung and dose of this catalogue; evening sound. Never fails: a drill that cannot be
// done here (no lane that long, no partner) is the planner's business, not the clock's.
DrillTime drill_time(const catalogue::Catalogue& catalogue, const catalogue::Drill& drill, int rung, int dose,
                     const session::Evening& evening);

// Moving and regrouping between two formations; zero when they are the same. Grows with turnout.
Milliseconds formation_change(catalogue::Formation from, catalogue::Formation to, const session::Evening& evening);
// Gathering at the start, before the first drill in any formation; fitting late players in is paid here, once.
Milliseconds gathering(const session::Evening& evening);
// Players there when the first drill starts: the turnout less those who come late, at least 1.
int players_at_first_drill(const session::Evening& evening);

// One line of the session's breakdown.
struct SessionLine {
  Milliseconds change;
  DrillTime time;
  Seconds rest{};  // breaks before it, before the change
};

// The one change that would help most, found by timing the session again with the change made.
struct Saving {
  std::string sentence;  // 'a third lane saves 2 min 10 s'; empty when nothing saves 15 s or more
  Seconds saved{};
};

struct SessionTime {
  std::vector<SessionLine> lines;  // one an item
  Seconds median;                  // sum of the parts, each rounded up: the planner's own arithmetic
  Seconds simulated_median;        // of the simulated sessions
  Seconds nine_in_ten;             // 90 % of simulated sessions are done by then
  int moving_permille = 0;         // share of the session's time a player is moving
  Saving best_saving;
  int sessions_simulated = 0;
};

// Fills rest, change, takes and starts of every item and the planned total, by the clock. The change before the
// first item is gathering, so planned counts from the first call.
void lay_out(session::Session& session, const catalogue::Catalogue& catalogue, const session::Evening& evening);

// Monte Carlo with the evening's seed; runs = 0 skips the simulation and uses moments (docs/model/clock.md:
// over_plan and margin).
SessionTime session_time(const session::Session& session, const catalogue::Catalogue& catalogue,
                         const session::Evening& evening, int runs = 2000);

// The lines of a session, deterministic: change (gathering first) and time of every item.
std::vector<SessionLine> session_lines(const session::Session& session, const catalogue::Catalogue& catalogue,
                                       const session::Evening& evening);

// The plan's own arithmetic: every part rounded up to seconds.
Seconds planned_time(const std::vector<SessionLine>& lines);

// Standard deviation of the whole session from the moments of its parts, for the planner's margin.
Seconds moment_spread(const std::vector<SessionLine>& lines);
// What the plan keeps free so that nine sessions in ten end in the slot: hold-ups, skew and the 90 % quantile
// of the moments.
Seconds moment_margin(const std::vector<SessionLine>& lines);

}  // namespace lanework::clock
