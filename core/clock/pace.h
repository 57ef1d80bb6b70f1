// The pace of a squad, learned from recorded session times: a normal belief about the log of the factor
// that multiplies doing. Maths and constants: docs/model/clock.md. An odd night cannot move it far.
#pragma once

#include <optional>
#include <vector>

#include "core/clock/clock.h"

namespace lanework::clock {

struct PaceBelief {
  double log_mean = 0;
  double log_spread = 0;  // standard deviation, above 0
};

// What is believed of a squad of this age before any session was timed.
PaceBelief pace_prior(int age);

// Log of the pace of one recorded session. lines: the session timed at pace 1.000, as it was done. Empty
// when the lines hold no doing.
std::optional<double> observed_log_pace(Seconds recorded, const std::vector<SessionLine>& lines);

// The belief after one more session.
PaceBelief learn_pace(PaceBelief belief, double observed_log_pace);

// For Evening::pace_thousandths: 700..1500.
int pace_thousandths(const PaceBelief& belief);

}  // namespace lanework::clock
