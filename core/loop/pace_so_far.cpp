#include "core/loop/pace_so_far.h"

#include "core/clock/clock.h"
#include "core/clock/pace.h"

namespace lanework::loop {

PaceSoFar pace_so_far(const catalogue::Catalogue& catalogue, const std::vector<TimedSession>& timed, int age) {
  PaceSoFar out;
  clock::PaceBelief belief = clock::pace_prior(age);
  for (const TimedSession& one : timed) {
    session::Evening evening = one.evening;
    evening.pace_thousandths = 1000;
    const auto observed = clock::observed_log_pace(one.recorded, clock::session_lines(one.planned, catalogue, evening));
    if (!observed) continue;
    belief = clock::learn_pace(belief, *observed);
    ++out.sessions;
  }
  out.thousandths = clock::pace_thousandths(belief);
  return out;
}

}  // namespace lanework::loop
