#include "core/evidence/standardised.h"

#include <algorithm>

#include "core/evidence/burden.h"

namespace lanework::evidence {

Standardised standardised_rate(std::span<const StandardPart> parts, double level) {
  double standard = 0;
  double hours = 0;
  double events = 0;
  for (const StandardPart& part : parts) {
    standard += part.standard_hours;
    hours += part.hours;
    events += static_cast<double>(part.events);
  }
  double squares = 0;
  double largest = 0;
  Standardised out;
  for (const StandardPart& part : parts) {
    const double weight = part.standard_hours / standard / part.hours;
    out.rate += weight * static_cast<double>(part.events);
    squares += weight * weight * static_cast<double>(part.events);
    largest = std::max(largest, weight);
  }
  out.crude = events / hours;
  out.limits = weighted_limits(out.rate, squares, largest, level);
  return out;
}

}  // namespace lanework::evidence
