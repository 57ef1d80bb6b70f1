#include "core/evidence/rate_ratio.h"

#include <algorithm>
#include <boost/math/special_functions/beta.hpp>
#include <cmath>
#include <limits>

#include "core/evidence/find_root.h"
#include "core/evidence/normal.h"

namespace lanework::evidence {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

// The first of n events falls to 'one' with this chance where the rates are 'ratio' apart.
double share_at(double ratio, const Exposed& one, const Exposed& other) {
  return ratio * one.hours / (ratio * one.hours + other.hours);
}
double ratio_at(double share, const Exposed& one, const Exposed& other) {
  return share >= 1 ? kInfinite : share / (1 - share) * other.hours / one.hours;
}

// Of a binomial count x of n.
struct Binomial {
  double x;
  double n;
  // P(X > x), P(X < x), P(X = x) at a share.
  [[nodiscard]] double above(double share) const { return x >= n ? 0 : boost::math::ibeta(x + 1, n - x, share); }
  [[nodiscard]] double below(double share) const { return x <= 0 ? 0 : boost::math::ibetac(x, n - x + 1, share); }
  [[nodiscard]] double equal(double share) const {
    if (share <= 0 || share >= 1) return (share <= 0) == (x <= 0) && (share >= 1) == (x >= n) ? 1 : 0;
    return boost::math::ibeta_derivative(x + 1, n - x + 1, share) / (n + 1);
  }
};

Binomial counted(const Exposed& one, const Exposed& other) {
  return {static_cast<double>(one.events), static_cast<double>(one.events + other.events)};
}

}  // namespace

double rate_ratio(const Exposed& one, const Exposed& other) {
  const auto events = static_cast<double>(one.events);
  const auto others = static_cast<double>(other.events);
  if (others == 0) return events == 0 ? std::numeric_limits<double>::quiet_NaN() : kInfinite;
  return events / others * other.hours / one.hours;
}

Tested exact_ratio(const Exposed& one, const Exposed& other, double level) {
  const Binomial at = counted(one, other);
  const double tail = (1 - level) / 2;
  Tested out;
  const double low = at.x <= 0 ? 0 : boost::math::ibeta_inv(at.x, at.n - at.x + 1, tail);
  const double high = at.x >= at.n ? 1 : boost::math::ibetac_inv(at.x + 1, at.n - at.x, tail);
  out.limits = {ratio_at(low, one, other), ratio_at(high, one, other)};
  const double even = share_at(1, one, other);
  const double equal = at.equal(even);
  out.p = std::min(1.0, 2 * std::min(at.above(even) + equal, at.below(even) + equal));
  return out;
}

Tested mid_p_ratio(const Exposed& one, const Exposed& other, double level) {
  const Binomial at = counted(one, other);
  const double tail = (1 - level) / 2;
  Tested out;
  const auto too_high = [&](double share) { return at.above(share) + at.equal(share) / 2 - tail; };
  const auto too_low = [&](double share) { return tail - at.below(share) - at.equal(share) / 2; };
  const double low = at.x <= 0 ? 0 : find_root(too_high, 0, 1);
  const double high = at.x >= at.n ? 1 : find_root(too_low, 0, 1);
  out.limits = {ratio_at(low, one, other), ratio_at(high, one, other)};
  const double even = share_at(1, one, other);
  const double half = at.equal(even) / 2;
  out.p = std::min(1.0, 2 * std::min(at.above(even) + half, at.below(even) + half));
  return out;
}

Tested log_wald_ratio(const Exposed& one, const Exposed& other, double level) {
  const double log_ratio = std::log(rate_ratio(one, other));
  const double error = std::sqrt(1.0 / static_cast<double>(one.events) + 1.0 / static_cast<double>(other.events));
  const double reach = reach_of(level) * error;
  return {{std::exp(log_ratio - reach), std::exp(log_ratio + reach)}, two_sided_p(log_ratio / error)};
}

double least_likely_p(const Exposed& one, const Exposed& other) {
  const Binomial at = counted(one, other);
  const double even = share_at(1, one, other);
  const double observed = at.equal(even);
  double sum = 0;
  for (double x = 0; x <= at.n; ++x) {
    const double chance = Binomial{x, at.n}.equal(even);
    // Equal chances may differ in the last digits.
    if (chance <= observed * (1 + 1e-7)) sum += chance;
  }
  return std::min(1.0, sum);
}

Difference rate_difference(const Exposed& one, const Exposed& other, double level) {
  const auto events = static_cast<double>(one.events);
  const auto others = static_cast<double>(other.events);
  const double difference = events / one.hours - others / other.hours;
  const double error = std::sqrt(events / (one.hours * one.hours) + others / (other.hours * other.hours));
  const double reach = reach_of(level) * error;
  return {difference, {difference - reach, difference + reach}};
}

}  // namespace lanework::evidence
