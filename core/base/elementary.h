// exp, log and the standard normal quantile, computed from basic arithmetic and square roots only, so that
// every compiler that keeps IEEE double and does not fuse gives the same bits (the libraries' own differ).
// Errors: exp and log within 2 units in the last place where the result is a normal number.
#pragma once

namespace lanework {

double elementary_exp(double x);  // overflow gives infinity, underflow 0, not-a-number stays
double elementary_log(double x);  // 0 gives -infinity, a negative number not-a-number

// The z with P(Z <= z) = p. Algorithm AS 241, double precision form: Wichura 1988, doi 10.2307/2347330.
// REQUIRES: 0 < p < 1.
double normal_quantile(double p);

}  // namespace lanework
