#include "core/care/load/weighted_mean.h"

namespace lanework::care::load {

std::vector<double> weighted_means(double seed, const std::vector<double>& loads, int days) {
  const double decay = decay_of(days);
  std::vector<double> out;
  out.reserve(loads.size());
  double mean = seed;
  for (const double one : loads) {
    mean += decay * (one - mean);  // a constant load stays exactly what it is
    out.push_back(mean);
  }
  return out;
}

}  // namespace lanework::care::load
