#include "core/evidence/clustered_ratio.h"

#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace lanework::evidence {
namespace {

struct Arm {
  double events = 0;
  double hours = 0;
  double log_variance = 0;  // of its rate
  int squads = 0;
};

Arm arm_of(std::span<const Exposed> squads) {
  Arm arm;
  for (const Exposed& squad : squads) {
    arm.events += static_cast<double>(squad.events);
    arm.hours += squad.hours;
    ++arm.squads;
  }
  double squared = 0;
  for (const Exposed& squad : squads) {
    const double off = static_cast<double>(squad.events) - arm.events / arm.hours * squad.hours;
    squared += off * off;
  }
  arm.log_variance = squared * arm.squads / (arm.squads - 1.0) / (arm.events * arm.events);
  return arm;
}

}  // namespace

ClusteredRatio clustered_ratio(std::span<const Exposed> one, std::span<const Exposed> other, double level) {
  const Arm first = arm_of(one);
  const Arm second = arm_of(other);
  ClusteredRatio out;
  out.ratio = first.events / second.events * second.hours / first.hours;
  out.error = std::sqrt(first.log_variance + second.log_variance);
  out.degrees = first.squads + second.squads - 2;
  const boost::math::students_t distribution(out.degrees);
  const double reach = boost::math::quantile(distribution, (1 + level) / 2) * out.error;
  const double log_ratio = std::log(out.ratio);
  out.tested.limits = {std::exp(log_ratio - reach), std::exp(log_ratio + reach)};
  out.tested.p = 2 * boost::math::cdf(boost::math::complement(distribution, std::abs(log_ratio) / out.error));
  out.variance_factor = out.error * out.error / (1 / first.events + 1 / second.events);
  return out;
}

}  // namespace lanework::evidence
