// How long a squad really took, from sessions that somebody timed. docs/model/clock.md, 'Learning the squad's pace'.
#pragma once

#include <vector>

#include "core/base/units.h"
#include "core/catalogue/catalogue.h"
#include "core/session/evening.h"
#include "core/session/session.h"

namespace lanework::loop {

// A session that was held as planned, nothing left out, with the minutes that it took.
struct TimedSession {
  Seconds recorded;
  session::Session planned;  // its items
  session::Evening evening;
};

struct PaceSoFar {
  int sessions = 0;  // that said something
  int thousandths = 1000;
};

// In the order in which they were. age: of the youngest; what is believed before any session goes by it.
PaceSoFar pace_so_far(const catalogue::Catalogue& catalogue, const std::vector<TimedSession>& timed, int age);

}  // namespace lanework::loop
