#include "core/evidence/mixed/squad_mode.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace lanework::evidence {

// The effect z where events x z - expected x exp(z) - z^2 / (2 variance) is highest. That is concave: Newton's steps,
// held short where the exponential would run away.
double squad_mode(double events, double log_expected, double variance) {
  double z = 0;
  for (int step = 0; step < 200; ++step) {
    const double mean = std::exp(log_expected + z);
    const double move = (variance * (events - mean) - z) / (variance * mean + 1);
    z += std::clamp(move, -1.0, 1.0);
    if (std::abs(move) <= 4 * std::numeric_limits<double>::epsilon() * std::max(1.0, std::abs(z))) break;
  }
  return z;
}

}  // namespace lanework::evidence
