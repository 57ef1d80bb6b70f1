#include "core/evidence/burden.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>
#include <limits>
#include <vector>

#include "core/evidence/normal.h"

namespace lanework::evidence {
namespace {

// Points at which the pivots are taken: the same ones each time, spread evenly (Halton's sequences in bases 2, 3 and
// 5).
constexpr int kPoints = 2000;

double halton(int index, int base) {
  double share = 0;
  double digit = 1;
  for (; index > 0; index /= base) {
    digit /= base;
    share += digit * (index % base);
  }
  return share;
}

// Of the days that were lost at all, whose logarithms have this mean and sum of squares around it.
struct LogDays {
  double count = 0;
  double mean = 0;
  double squares = 0;
};

LogDays log_days(std::span<const double> days) {
  LogDays out;
  for (const double own : days) {
    if (own <= 0) continue;
    out.count += 1;
    out.mean += std::log(own);
  }
  out.mean /= out.count;
  for (const double own : days) {
    if (own > 0) out.squares += std::pow(std::log(own) - out.mean, 2);
  }
  return out;
}

// Of the days in all: what count, spread and mean could have been, each by its pivot.
Interval pivot_limits(const LogDays& days, double level) {
  std::vector<double> sums;
  for (int k = 1; k <= kPoints; ++k) {
    const double count = boost::math::gamma_p_inv(days.count + 0.5, halton(k, 2));
    const double variance = days.squares / (2 * boost::math::gamma_p_inv((days.count - 1) / 2, halton(k, 3)));
    const double mean = days.mean + normal_quantile(halton(k, 5)) * std::sqrt(variance / days.count);
    sums.push_back(count * std::exp(mean + variance / 2));
  }
  std::sort(sums.begin(), sums.end());
  const auto tail = static_cast<std::size_t>((1 - level) / 2 * kPoints);
  return {sums[tail], sums[sums.size() - 1 - tail]};
}

}  // namespace

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
  const LogDays lost = log_days(days);
  Interval limits{0, std::numeric_limits<double>::infinity()};
  if (sum > 0) limits = weighted_limits(sum, squares, largest, level);
  if (lost.count < 2) {
    limits.high = std::numeric_limits<double>::infinity();
  } else {
    const Interval pivots = pivot_limits(lost, level);
    limits = {std::min(limits.low, pivots.low), std::max(limits.high, pivots.high)};
  }
  return {sum / hours, {limits.low / hours, limits.high / hours}};
}

}  // namespace lanework::evidence
