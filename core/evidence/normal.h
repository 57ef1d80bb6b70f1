// The normal distribution.
#pragma once

namespace lanework::evidence {

double normal_quantile(double share);  // of the standard normal, 0 < share < 1
double two_sided_p(double z);          // P(|Z| >= |z|)
// How many standard errors an interval of this level reaches to each side.
double reach_of(double level);

}  // namespace lanework::evidence
