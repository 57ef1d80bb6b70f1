// What one squad adds to the log likelihood of a Poisson model whose squads differ by a normal effect on the log rate.
//
// The effect enters every row of the squad alike, so that all the squad's rows are one sum: the events to be expected
// of it without its effect. Its integral over the effect is taken by Laplace's method or by Gauss and Hermite's rule
// around the mode (Pinheiro JC, Bates DM, J Comput Graph Stat 1995, doi 10.1080/10618600.1995.10474663; from memory).
#pragma once

#include "core/evidence/mixed/jet.h"
#include "core/evidence/mixed/quadrature.h"

namespace lanework::evidence {

// Derivatives in the logarithm of the expected events, and in the logarithm of the effects' standard deviation.
using SquadJet = Jet<2>;
inline constexpr std::size_t kByExpected = 0;
inline constexpr std::size_t kByDeviation = 1;

struct SquadTerm {
  SquadJet log_likelihood;  // less what does not depend on the effect
  double mode = 0;          // of the effect
  double variance = 0;      // of the effect given the counts, by its curvature there
};

// rule: of one point for Laplace's method. REQUIRES: finite arguments.
SquadTerm squad_term(double events, double log_expected, double log_deviation, const Quadrature& rule);

}  // namespace lanework::evidence
