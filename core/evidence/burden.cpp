#include "core/evidence/burden.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <limits>

namespace lanework::evidence {

Interval weighted_limits(double sum, double sum_of_squares, double largest, double level) {
  const double tail = (1 - level) / 2;
  Interval out;
  if (sum > 0) out.low = sum_of_squares / sum * boost::math::gamma_p_inv(sum * sum / sum_of_squares, tail);
  const double above = sum + largest;
  const double squares = sum_of_squares + largest * largest;
  out.high = squares / above * boost::math::gamma_q_inv(above * above / squares, tail);
  return out;
}

Burden burden(std::span<const double> days, double hours, double level) {
  double sum = 0;
  double squares = 0;
  double largest = 0;
  for (const double own : days) {
    sum += own;
    squares += own * own;
    largest = std::max(largest, own);
  }
  if (sum == 0) return {0, {0, std::numeric_limits<double>::infinity()}};
  const Interval limits = weighted_limits(sum, squares, largest, level);
  return {sum / hours, {limits.low / hours, limits.high / hours}};
}

}  // namespace lanework::evidence
