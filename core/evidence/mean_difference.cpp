#include "core/evidence/mean_difference.h"

#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace lanework::evidence {
namespace {

struct Mean {
  double value = 0;
  double variance = 0;  // of the mean
  double degrees = 0;
};

Mean mean_of(std::span<const double> values) {
  Mean out;
  const auto count = static_cast<double>(values.size());
  for (const double value : values) out.value += value / count;
  double squares = 0;
  for (const double value : values) squares += (value - out.value) * (value - out.value);
  out.degrees = count - 1;
  out.variance = squares / out.degrees / count;
  return out;
}

std::optional<MeanDifference> with_limits(double difference, double variance, double degrees, double level) {
  // Values that are alike but for their last digits are alike.
  if (variance <= 1e-24 * (1 + difference * difference)) return {};
  const double error = std::sqrt(variance);
  const double reach = boost::math::quantile(boost::math::students_t(degrees), (1 + level) / 2) * error;
  return MeanDifference{difference, error, degrees, {difference - reach, difference + reach}};
}

}  // namespace

std::optional<MeanDifference> welch_difference(std::span<const double> one, std::span<const double> other,
                                               double level) {
  if (one.size() < 2 || other.size() < 2) return {};
  const Mean first = mean_of(one);
  const Mean second = mean_of(other);
  const double variance = first.variance + second.variance;
  const double degrees =
      variance * variance /
      (first.variance * first.variance / first.degrees + second.variance * second.variance / second.degrees);
  return with_limits(first.value - second.value, variance, degrees, level);
}

std::optional<MeanDifference> paired_difference(std::span<const double> differences, double level) {
  if (differences.size() < 2) return {};
  const Mean mean = mean_of(differences);
  return with_limits(mean.value, mean.variance, mean.degrees, level);
}

}  // namespace lanework::evidence
