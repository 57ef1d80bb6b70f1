#include "core/evidence/mixed/poisson_objective.h"

#include <algorithm>
#include <cmath>

#include "core/evidence/mixed/squad_term.h"

namespace lanework::evidence {

PoissonObjective::PoissonObjective(const Frame& frame, int points)
    : frame_(frame), rule_(gauss_hermite(points)), constants_(constants_of(frame)), rows_(frame) {}

ObjectiveValue PoissonObjective::at(const std::vector<double>& coefficients,
                                    std::optional<double> log_deviation) const {
  const std::size_t columns = frame_.columns();
  const std::size_t parameters = columns + (log_deviation ? 1 : 0);
  ObjectiveValue out(parameters);
  out.log_likelihood = constants_.log_likelihood;
  for (std::size_t c = 0; c < columns; ++c) {
    out.log_likelihood += constants_.events_by_column[c] * coefficients[c];
    out.gradient[c] = constants_.events_by_column[c];
  }
  SquadSums sums;
  for (std::size_t squad = 0; squad < frame_.squads(); ++squad) {
    rows_.sum(squad, coefficients, sums);
    SquadJet term;
    if (log_deviation) {
      term = squad_term(constants_.squad_events[squad], std::log(sums.expected), *log_deviation, rule_).log_likelihood;
    } else {
      term = -exp(SquadJet(std::log(sums.expected), kByExpected));
    }
    out.log_likelihood += term.value;
    // By the chain rule through the logarithm of the expected events, whose slope is the mean of the design.
    const double slope = term.first[kByExpected];
    const double bend = term.second[SquadJet::at(kByExpected, kByExpected)];
    const double* squares = sums.squares.data();
    for (std::size_t c = 0; c < columns; ++c) {
      const double own = sums.design[c] / sums.expected;
      out.gradient[c] += slope * own;
      for (std::size_t d = 0; d <= c; ++d) {
        const double other = sums.design[d] / sums.expected;
        out.bend(c, d) += slope * (*squares++ / sums.expected) + (bend - slope) * own * other;
      }
      if (log_deviation) out.bend(columns, c) += term.second[SquadJet::at(kByExpected, kByDeviation)] * own;
    }
    if (!log_deviation) continue;
    out.gradient[columns] += term.first[kByDeviation];
    out.bend(columns, columns) += term.second[SquadJet::at(kByDeviation, kByDeviation)];
  }
  out.mirror();
  return out;
}

std::vector<RandomEffect> PoissonObjective::effects(const std::vector<double>& coefficients,
                                                    double log_deviation) const {
  std::vector<RandomEffect> out;
  SquadSums sums;
  for (std::size_t squad = 0; squad < frame_.squads(); ++squad) {
    rows_.sum(squad, coefficients, sums);
    const SquadTerm term = squad_term(constants_.squad_events[squad], std::log(sums.expected), log_deviation, rule_);
    out.push_back({term.mode, term.variance});
  }
  return out;
}

double PoissonObjective::slope_at_no_effect(const std::vector<double>& coefficients) const {
  double slope = 0;
  SquadSums sums;
  for (std::size_t squad = 0; squad < frame_.squads(); ++squad) {
    rows_.sum(squad, coefficients, sums);
    const double off = constants_.squad_events[squad] - sums.expected;
    slope += (off * off - sums.expected) / 2;
  }
  return slope;
}

}  // namespace lanework::evidence
