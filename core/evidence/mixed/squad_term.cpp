#include "core/evidence/mixed/squad_term.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

namespace lanework::evidence {
namespace {

// The effect z where events x z - expected x exp(z) - z^2 / (2 variance) is highest. That is concave: Newton's steps,
// held short where the exponential would run away.
double mode_of(double events, double log_expected, double variance) {
  double z = 0;
  for (int step = 0; step < 200; ++step) {
    const double mean = std::exp(log_expected + z);
    const double move = (variance * (events - mean) - z) / (variance * mean + 1);
    z += std::clamp(move, -1.0, 1.0);
    if (std::abs(move) <= 4 * std::numeric_limits<double>::epsilon() * std::max(1.0, std::abs(z))) break;
  }
  return z;
}

}  // namespace

SquadTerm squad_term(double events, double log_expected, double log_deviation, const Quadrature& rule) {
  const SquadJet expected(log_expected, kByExpected);
  const SquadJet deviation(log_deviation, kByDeviation);
  const SquadJet variance = exp(deviation * 2);
  const SquadJet y(events);
  SquadJet z(mode_of(events, log_expected, variance.value));
  // At the mode each step of Newton's gives the mode's derivatives one order more.
  for (int order = 0; order < 2; ++order) {
    const SquadJet mean = exp(expected + z);
    z = z + (variance * (y - mean) - z) / (variance * mean + 1);
  }
  const auto height = [&](const SquadJet& at) { return y * at - exp(expected + at) - at * at / (variance * 2); };
  const SquadJet top = height(z);
  const SquadJet curved = variance * exp(expected + z) + 1;
  const SquadJet width = sqrt(variance / curved * 2);
  SquadTerm out;
  out.mode = z.value;
  out.variance = variance.value / curved.value;
  SquadJet sum(0);
  for (std::size_t k = 0; k < rule.points.size(); ++k)
    sum += exp(height(z + width * rule.points[k]) - top + rule.log_weights[k]);
  out.log_likelihood = top + log(sum) - log(curved) * 0.5 - std::log(std::numbers::pi) / 2;
  return out;
}

}  // namespace lanework::evidence
