#include "core/evidence/mixed/poisson_objective.h"

#include <algorithm>
#include <cmath>

#include "core/evidence/mixed/laplace_terms.h"
#include "core/evidence/mixed/squad_sums.h"
#include "core/evidence/mixed/squad_term.h"

namespace lanework::evidence {
namespace {

using Eigen::ArrayXd;
using Numbers = Eigen::Ref<const ArrayXd>;

// So many squads are looked at together: their sums stay near the processor.
constexpr std::size_t kTogether = 128;

SquadTerms terms_by_rule(const Numbers& events, const Numbers& expected, double log_deviation, const Quadrature& rule) {
  SquadTerms out;
  for (ArrayXd* part : {&out.log_likelihood, &out.by_expected, &out.by_expected_twice, &out.by_deviation, &out.by_both,
                        &out.by_deviation_twice, &out.mode, &out.variance})
    part->resize(events.size());
  for (Eigen::Index i = 0; i < events.size(); ++i) {
    const SquadTerm term = squad_term(events(i), std::log(expected(i)), log_deviation, rule);
    const SquadJet& jet = term.log_likelihood;
    out.log_likelihood(i) = jet.value;
    out.by_expected(i) = jet.first[kByExpected];
    out.by_deviation(i) = jet.first[kByDeviation];
    out.by_expected_twice(i) = jet.second[SquadJet::at(kByExpected, kByExpected)];
    out.by_both(i) = jet.second[SquadJet::at(kByExpected, kByDeviation)];
    out.by_deviation_twice(i) = jet.second[SquadJet::at(kByDeviation, kByDeviation)];
    out.mode(i) = term.mode;
    out.variance(i) = term.variance;
  }
  return out;
}

SquadTerms terms_of(const Numbers& events, const Numbers& expected, double log_deviation, const Quadrature& rule) {
  return rule.points.size() == 1 ? laplace_terms(events, expected, log_deviation)
                                 : terms_by_rule(events, expected, log_deviation, rule);
}

SquadTerms terms_without_effect(const ArrayXd& expected) {
  const ArrayXd none = ArrayXd::Zero(expected.size());
  return {-expected, -expected, -expected, none, none, none, none, none};
}

// By the chain rule through the logarithm of the expected events, whose slope is the mean of the design.
void add_terms(const SquadSums& sums, const SquadTerms& terms, ObjectiveValue& out) {
  const Eigen::Index columns = sums.design.rows();
  const auto design = sums.design.matrix();
  const Eigen::VectorXd gradient = design * terms.by_expected.matrix();
  const Eigen::VectorXd squares = sums.squares.matrix() * terms.by_expected.matrix();
  const Eigen::VectorXd both = design * terms.by_both.matrix();
  const Eigen::MatrixXd bent = design * (terms.by_expected_twice - terms.by_expected).matrix().asDiagonal();
  const Eigen::MatrixXd coupled = bent * design.transpose();
  out.log_likelihood += terms.log_likelihood.sum();
  Eigen::Index square = 0;
  for (Eigen::Index c = 0; c < columns; ++c) {
    const auto at = static_cast<std::size_t>(c);
    out.gradient[at] += gradient(c);
    for (Eigen::Index d = 0; d <= c; ++d)
      out.bend(at, static_cast<std::size_t>(d)) += squares(square++) + coupled(c, d);
  }
  const auto deviation = static_cast<std::size_t>(columns);
  if (out.gradient.size() == deviation) return;
  out.gradient[deviation] += terms.by_deviation.sum();
  out.bend(deviation, deviation) += terms.by_deviation_twice.sum();
  for (std::size_t c = 0; c < deviation; ++c) out.bend(deviation, c) += both(static_cast<Eigen::Index>(c));
}

}  // namespace

PoissonObjective::PoissonObjective(const Frame& frame, int points)
    : rule_(gauss_hermite(points)), constants_(constants_of(frame)), rows_(frame) {}

ObjectiveValue PoissonObjective::at(const std::vector<double>& coefficients,
                                    std::optional<double> log_deviation) const {
  const std::size_t columns = rows_.columns();
  ObjectiveValue out(columns + (log_deviation ? 1 : 0));
  out.log_likelihood = constants_.log_likelihood;
  for (std::size_t c = 0; c < columns; ++c) {
    out.log_likelihood += constants_.events_by_column[c] * coefficients[c];
    out.gradient[c] = constants_.events_by_column[c];
  }
  SquadSums sums;
  for (std::size_t first = 0; first < rows_.squads(); first += kTogether) {
    const std::size_t end = std::min(first + kTogether, rows_.squads());
    sum_squads(rows_, coefficients, first, end, sums);
    add_terms(sums,
              log_deviation ? terms_of(events().segment(static_cast<Eigen::Index>(first), sums.expected.size()),
                                       sums.expected, *log_deviation, rule_)
                            : terms_without_effect(sums.expected),
              out);
  }
  out.mirror();
  return out;
}

std::vector<RandomEffect> PoissonObjective::effects(const std::vector<double>& coefficients,
                                                    double log_deviation) const {
  const SquadTerms terms = terms_of(events(), expected_events(rows_, coefficients), log_deviation, rule_);
  std::vector<RandomEffect> out;
  for (Eigen::Index i = 0; i < terms.mode.size(); ++i) out.push_back({terms.mode(i), terms.variance(i)});
  return out;
}

double PoissonObjective::slope_at_no_effect(const std::vector<double>& coefficients) const {
  const ArrayXd expected = expected_events(rows_, coefficients);
  return ((events() - expected).square() - expected).sum() / 2;
}

}  // namespace lanework::evidence
