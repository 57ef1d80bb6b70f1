#include "core/evidence/mixed/squad_term.h"

#include <cmath>
#include <numbers>

#include "core/evidence/mixed/squad_mode.h"

namespace lanework::evidence {

SquadTerm squad_term(double events, double log_expected, double log_deviation, const Quadrature& rule) {
  const SquadJet expected(log_expected, kByExpected);
  const SquadJet deviation(log_deviation, kByDeviation);
  const SquadJet variance = exp(deviation * 2);
  const SquadJet y(events);
  const SquadJet z = squad_mode(events, expected, variance);
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
