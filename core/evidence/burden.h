// Days lost per hours: how many injuries there were times how long they kept players out.
//
// Few long injuries make most of the days, so that a count's interval times the mean says too little. No interval for
// burden is settled (Br J Sports Med 2024, doi 10.1136/bjsports-2023-107496). Two are made, and each end is the wider
// one's:
// - days as weights of Poisson counts, by a gamma distribution (Fay MP, Feuer EJ, Stat Med 1997, doi
//   10.1002/(SICI)1097-0258(19970415)16:7<791::AID-SIM500>3.0.CO;2-#): right once there are many injuries, too short
//   before;
// - a Poisson count of injuries whose days are log-normal, by generalised pivots (Krishnamoorthy K, Mathew T, J Stat
// Plan
//   Inference 2003, doi 10.1016/S0378-3758(02)00153-2; from memory): right with few injuries, where the days are skewed
//   like that; it needs two injuries that cost a day.
// How often the interval holds the true value is simulated in tests/evidence/burden_test.cpp.
#pragma once

#include <span>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct Burden {
  double days_an_hour = 0;
  Interval limits;
};

// days: of each injury, 0 or more. hours > 0. With fewer than two injuries that cost a day the upper limit is infinite:
// nobody knows how long the next one lasts.
Burden burden(std::span<const double> days, double hours, double level);

// Limits of a sum of weights times Poisson counts, as of rates in a standard population: of the weights of what
// happened their sum and sum of squares, and the largest that could.
Interval weighted_limits(double sum, double sum_of_squares, double largest, double level);

}  // namespace lanework::evidence
