// Exponentially weighted means of daily load: Williams S, West S, Cross MJ, Stokes KA 2017, doi
// 10.1136/bjsports-2016-096589. There is no ratio of two such means here, and no threshold: dividing them makes
// artefacts (Impellizzeri 2021, doi 10.1007/s40279-020-01378-6).
#pragma once

#include <vector>

namespace lanework::care::load {

inline constexpr int kShortDays = 7;
inline constexpr int kLongDays = 28;
// Before so many days a mean still hangs on its seed.
inline constexpr int kSettledAfterDays = 28;

constexpr double decay_of(int days) { return 2.0 / (days + 1); }  // the weight of today

// today = decay x load + (1 - decay) x yesterday, from the seed on; one value a load.
std::vector<double> weighted_means(double seed, const std::vector<double>& loads, int days);

}  // namespace lanework::care::load
