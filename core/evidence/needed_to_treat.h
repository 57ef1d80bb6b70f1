// How many of something, such as squads that warm up for a season, it takes for one event fewer.
//
// One by the difference of rates; its limits are one by the difference's, and where those lie on both sides of 0 they
// run through infinity: 'one fewer for every 4, or none at all, or one more for every 20' (Altman DG, BMJ 1998, doi
// 10.1136/bmj.317.7168.1309). The difference is what to go by.
#pragma once

#include <optional>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct NeededToTreat {
  // Above 0: so many for one event fewer; below 0: for one more; empty: no difference.
  std::optional<double> estimate;
  // The numbers at the two ends of the difference's interval, of the most benefit and the least (or the most harm).
  // Where 'through_infinity' holds, what lies between them is all numbers above 'most_benefit', infinity, and all below
  // 'least_benefit', which is then a number for one more.
  std::optional<double> most_benefit;
  std::optional<double> least_benefit;
  bool through_infinity = false;
};

// fewer: events fewer of each one treated, with its limits.
NeededToTreat needed_to_treat(double fewer, const Interval& limits);

}  // namespace lanework::evidence
