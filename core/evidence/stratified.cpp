#include "core/evidence/stratified.h"

#include <algorithm>
#include <boost/math/special_functions/gamma.hpp>
#include <cmath>

#include "core/evidence/normal.h"

namespace lanework::evidence {
namespace {

struct Weighted {
  double one;       // events of one x hours of the other / hours
  double other;     // events of the other x hours of one / hours
  double hours;     // hours of one x hours of the other / hours
  double variance;  // of one - other x ratio, with its events at their mean
};

Weighted weigh(const Stratum& stratum) {
  const double hours = stratum.one.hours + stratum.other.hours;
  const auto one = static_cast<double>(stratum.one.events);
  const auto other = static_cast<double>(stratum.other.events);
  return {one * stratum.other.hours / hours, other * stratum.one.hours / hours,
          stratum.one.hours * stratum.other.hours / hours,
          (one + other) * stratum.one.hours * stratum.other.hours / (hours * hours)};
}

Pooled ratio_of(double log_ratio, double error, double level) {
  const double reach = reach_of(level) * error;
  return {std::exp(log_ratio), error, {std::exp(log_ratio - reach), std::exp(log_ratio + reach)}};
}

struct LogRatio {
  double value;
  double weight;  // 1 / variance
};

LogRatio log_ratio_of(const Stratum& stratum) {
  const double variance =
      1.0 / static_cast<double>(stratum.one.events) + 1.0 / static_cast<double>(stratum.other.events);
  return {std::log(rate_ratio(stratum.one, stratum.other)), 1 / variance};
}

struct Mean {
  double value = 0;
  double weights = 0;
  double chi_squared = 0;  // of the others around it
  double squares = 0;      // of the weights
  int count = 0;
};

Mean mean_of(std::span<const Stratum> strata) {
  Mean mean;
  for (const Stratum& stratum : strata) {
    if (stratum.one.events == 0 || stratum.other.events == 0) continue;
    const LogRatio log_ratio = log_ratio_of(stratum);
    mean.value += log_ratio.weight * log_ratio.value;
    mean.weights += log_ratio.weight;
    mean.squares += log_ratio.weight * log_ratio.weight;
    ++mean.count;
  }
  mean.value /= mean.weights;
  for (const Stratum& stratum : strata) {
    if (stratum.one.events == 0 || stratum.other.events == 0) continue;
    const LogRatio log_ratio = log_ratio_of(stratum);
    mean.chi_squared += log_ratio.weight * (log_ratio.value - mean.value) * (log_ratio.value - mean.value);
  }
  return mean;
}

}  // namespace

Pooled mantel_haenszel_ratio(std::span<const Stratum> strata, double level) {
  double one = 0;
  double other = 0;
  double variance = 0;
  for (const Stratum& stratum : strata) {
    const Weighted weighted = weigh(stratum);
    one += weighted.one;
    other += weighted.other;
    variance += weighted.variance;
  }
  return ratio_of(std::log(one / other), std::sqrt(variance / (one * other)), level);
}

Pooled mantel_haenszel_difference(std::span<const Stratum> strata, double level) {
  double difference = 0;
  double hours = 0;
  double variance = 0;
  for (const Stratum& stratum : strata) {
    const Weighted weighted = weigh(stratum);
    difference += weighted.one - weighted.other;
    hours += weighted.hours;
    const double rate = static_cast<double>(stratum.one.events) / (stratum.one.hours * stratum.one.hours);
    const double other = static_cast<double>(stratum.other.events) / (stratum.other.hours * stratum.other.hours);
    variance += weighted.hours * weighted.hours * (rate + other);
  }
  const double error = std::sqrt(variance) / hours;
  const double reach = reach_of(level) * error;
  return {difference / hours, error, {difference / hours - reach, difference / hours + reach}};
}

Heterogeneity heterogeneity(std::span<const Stratum> strata) {
  const Mean mean = mean_of(strata);
  if (mean.count < 2) return {};
  const double degrees = mean.count - 1;
  return {mean.chi_squared, mean.count - 1, boost::math::gamma_q(degrees / 2, mean.chi_squared / 2)};
}

RandomEffects random_effects_ratio(std::span<const Stratum> strata, double level) {
  const Mean mean = mean_of(strata);
  const double degrees = mean.count - 1;
  RandomEffects out;
  const double spread = mean.weights - mean.squares / mean.weights;
  if (mean.count > 1) out.between_variance = std::max(0.0, (mean.chi_squared - degrees) / spread);
  if (mean.chi_squared > 0) out.share_of_variance = std::max(0.0, (mean.chi_squared - degrees) / mean.chi_squared);
  double weights = 0;
  double sum = 0;
  for (const Stratum& stratum : strata) {
    const LogRatio log_ratio = log_ratio_of(stratum);
    const double weight = 1 / (1 / log_ratio.weight + out.between_variance);
    sum += weight * log_ratio.value;
    weights += weight;
  }
  out.ratio = ratio_of(sum / weights, 1 / std::sqrt(weights), level);
  return out;
}

}  // namespace lanework::evidence
