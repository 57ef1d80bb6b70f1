// Where a rising function crosses 0.
#pragma once

#include <boost/math/tools/toms748_solve.hpp>
#include <cstdint>
#include <utility>

namespace lanework::evidence {

// REQUIRES: rising(low) <= 0 <= rising(high). To the last digits that a double has.
template <class Function>
double find_root(const Function& rising, double low, double high) {
  const double at_low = rising(low);
  const double at_high = rising(high);
  if (at_low >= 0) return low;
  if (at_high <= 0) return high;
  std::uintmax_t most_steps = 200;
  const boost::math::tools::eps_tolerance<double> close(52);
  const auto [from, to] = boost::math::tools::toms748_solve(rising, low, high, at_low, at_high, close, most_steps);
  return from + (to - from) / 2;
}

}  // namespace lanework::evidence
