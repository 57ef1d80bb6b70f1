#include "core/evidence/poisson_limits.h"

#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

#include "core/evidence/find_root.h"

namespace lanework::evidence {
namespace {

// P(X > count), P(X < count) and P(X = count) of a Poisson mean.
double above(double count, double mean) { return boost::math::gamma_p(count + 1, mean); }
double below(double count, double mean) { return count == 0 ? 0 : boost::math::gamma_q(count, mean); }
double equal(double count, double mean) {
  // The slope of P(X > count) in the mean.
  return boost::math::gamma_p_derivative(count + 1, mean);
}

}  // namespace

Interval exact_limits(std::int64_t count, double level) {
  const auto x = static_cast<double>(count);
  const double tail = (1 - level) / 2;
  return {count == 0 ? 0 : boost::math::gamma_p_inv(x, tail), boost::math::gamma_q_inv(x + 1, tail)};
}

Interval mid_p_limits(std::int64_t count, double level) {
  const auto x = static_cast<double>(count);
  const double tail = (1 - level) / 2;
  // Each lies inside the exact interval.
  const Interval exact = exact_limits(count, level);
  const auto too_high = [&](double mean) { return above(x, mean) + equal(x, mean) / 2 - tail; };
  const auto too_low = [&](double mean) { return tail - below(x, mean) - equal(x, mean) / 2; };
  return {count == 0 ? 0 : find_root(too_high, exact.low, x), find_root(too_low, x, exact.high)};
}

}  // namespace lanework::evidence
