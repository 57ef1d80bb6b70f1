// Two rates against each other: events in so many hours each, independent of one another.
//
// Given the sum of the events, the first count is binomial; all but the log-Wald interval come from that (Przyborowski
// J, Wilenski H, Biometrika 1940, doi 10.1093/biomet/31.3-4.313; from memory). Conventions of a p value and its
// interval must match (Fay MP, R Journal 2010, doi 10.32614/RJ-2010-008), so they are given in pairs.
#pragma once

#include <cstdint>

#include "core/evidence/interval.h"

namespace lanework::evidence {

struct Exposed {
  std::int64_t events = 0;
  double hours = 0;  // > 0
};

// An interval with the p value that belongs to it: below 1 - level exactly where the interval leaves out 1.
struct Tested {
  Interval limits;
  double p = 1;
};

// Rate of 'one' by rate of 'other': 0 where one has no events, infinite where the other has none, not a number where
// neither has any.
double rate_ratio(const Exposed& one, const Exposed& other);

// Each tail at most half; p is twice the smaller tail. Covers at least the level.
Tested exact_ratio(const Exposed& one, const Exposed& other, double level);
// The same with half of the observed count's chance taken off each tail.
Tested mid_p_ratio(const Exposed& one, const Exposed& other, double level);
// The normal approximation on the log scale. REQUIRES: events in both.
Tested log_wald_ratio(const Exposed& one, const Exposed& other, double level);
// p alone, by the rule of many packages: all outcomes no likelier than the observed one. No interval belongs to it
// here.
double least_likely_p(const Exposed& one, const Exposed& other);

struct Difference {
  double per_hour = 0;
  Interval limits;
};
// Rate of 'one' less rate of 'other', normal approximation.
Difference rate_difference(const Exposed& one, const Exposed& other, double level);

}  // namespace lanework::evidence
