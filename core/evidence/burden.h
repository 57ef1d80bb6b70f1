// Days lost per hours: how many injuries there were times how long they kept players out.
//
// Few long injuries make most of the days, so that a count's interval times the mean says too little. Each injury
// counts with its days as a weight, and the limits are those of a weighted sum of Poisson counts, by a gamma
// distribution (Fay MP, Feuer EJ, Stat Med 1997, doi 10.1002/(SICI)1097-0258(19970415)16:7<791::AID-SIM500>3.0.CO;2-#):
// skewed as the days are. No interval for burden is settled (Br J Sports Med 2024, doi 10.1136/bjsports-2023-107496);
// how often this one holds the true value is simulated in tests/evidence/burden_test.cpp.
#pragma once

#include <span>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct Burden {
  double days_an_hour = 0;
  Interval limits;
};

// days: of each injury, 0 or more. hours > 0. Without a lost day the lower limit is 0 and the upper one infinite:
// nobody knows how long the next one lasts.
Burden burden(std::span<const double> days, double hours, double level);

// The same sum for rates of strata in a standard population: weight times events, where the largest weight is that of
// an event that might have happened.
Interval weighted_limits(double sum, double sum_of_squares, double largest, double level);

}  // namespace lanework::evidence
