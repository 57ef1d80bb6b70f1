// Limits of the correlation of agreement, (2,1) of reliability.h, that hold also with few raters: generalised pivots of
// its three variances (Weerahandi S, J Am Stat Assoc 1993, doi 10.1080/01621459.1993.10476355; from memory).
//
// Each sum of squares is a variance times a chi-squared number; turned round, the chi-squared numbers spread the
// variances, and so the correlation, given the sums. The spread is integrated, not drawn: the same table gives the same
// limits. Shrout and Fleiss' own limits, by Satterthwaite's degrees of freedom, are short with few raters.
#pragma once

#include <cstddef>

#include "core/evidence/interval.h"
#include "core/evidence/reliability.h"

namespace lanework::evidence {

// Of a single score. REQUIRES: 2 subjects and 2 raters at least, subjects that are not all alike.
Interval agreement_limits(const MeanSquares& mean_squares, std::size_t subjects, std::size_t raters, double level);

// The correlation of the mean of so many scores, from that of one.
double correlation_of_mean(double one, std::size_t raters);

}  // namespace lanework::evidence
