// The mode of a squad's effect z, where events x z - expected x exp(z) - z^2 / (2 variance) is highest.
#pragma once

#include "core/evidence/mixed/jet.h"

namespace lanework::evidence {

double squad_mode(double events, double log_expected, double variance);

// With its derivatives: at the mode each step of Newton's gives them one order more.
template <std::size_t N>
Jet<N> squad_mode(double events, const Jet<N>& log_expected, const Jet<N>& variance) {
  Jet<N> z(squad_mode(events, log_expected.value, variance.value));
  for (int order = 0; order < 2; ++order) {
    const Jet<N> mean = exp(log_expected + z);
    z = z + (variance * (Jet<N>(events) - mean) - z) / (variance * mean + 1);
  }
  return z;
}

}  // namespace lanework::evidence
