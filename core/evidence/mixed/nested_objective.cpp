#include "core/evidence/mixed/nested_objective.h"

#include <Eigen/Core>
#include <cmath>

#include "core/evidence/mixed/club_term.h"
#include "core/evidence/mixed/laplace_terms.h"
#include "core/evidence/mixed/squad_sums.h"

namespace lanework::evidence {
namespace {

using Eigen::ArrayXd;
using Eigen::VectorXd;

// By the chain rule through the logarithms of the squads' expected events, whose slopes are the means of the design.
void add_club(const SquadSums& sums, const ClubTerm& term, ObjectiveValue& out) {
  const Eigen::Index columns = sums.design.rows();
  const auto design = sums.design.matrix();
  const VectorXd gradient = design * term.slope.matrix();
  const VectorXd squares = sums.squares.matrix() * term.slope.matrix();
  const VectorXd rank = design * term.rank.matrix();
  const VectorXd move = design * term.move.matrix();
  const VectorXd beside = design * term.beside.matrix();
  const Eigen::MatrixXd bent = design * (term.own - term.slope).matrix().asDiagonal();
  const Eigen::MatrixXd coupled = bent * design.transpose();
  out.log_likelihood += term.log_likelihood;
  Eigen::Index square = 0;
  for (Eigen::Index c = 0; c < columns; ++c) {
    const auto at = static_cast<std::size_t>(c);
    out.gradient[at] += gradient(c);
    for (Eigen::Index d = 0; d <= c; ++d) {
      out.bend(at, static_cast<std::size_t>(d)) += squares(square++) + coupled(c, d) +
                                                   term.rank_weight * rank(c) * rank(d) + beside(c) * move(d) +
                                                   move(c) * beside(d) + term.bend * move(c) * move(d);
    }
  }
  const auto deviations = static_cast<std::size_t>(columns);
  for (const std::size_t which : {kSquads, kClubs}) {
    const VectorXd both = design * term.by_both[which].matrix();
    for (std::size_t c = 0; c < deviations; ++c) out.bend(deviations + which, c) += both(static_cast<Eigen::Index>(c));
    out.gradient[deviations + which] += term.by_deviation[which];
  }
  out.bend(deviations + kSquads, deviations + kSquads) += term.by_deviations[0];
  out.bend(deviations + kClubs, deviations + kSquads) += term.by_deviations[1];
  out.bend(deviations + kClubs, deviations + kClubs) += term.by_deviations[2];
}

}  // namespace

NestedObjective::NestedObjective(const Frame& frame)
    : club_ends_(frame.club_ends), constants_(constants_of(frame)), rows_(frame) {}

ObjectiveValue NestedObjective::at(const std::vector<double>& coefficients, double log_squad_deviation,
                                   double log_club_deviation) const {
  const std::size_t columns = rows_.columns();
  ObjectiveValue out(columns + 2);
  out.log_likelihood = constants_.log_likelihood;
  for (std::size_t c = 0; c < columns; ++c) {
    out.log_likelihood += constants_.events_by_column[c] * coefficients[c];
    out.gradient[c] = constants_.events_by_column[c];
  }
  SquadSums sums;
  std::size_t first = 0;
  for (const std::size_t end : club_ends_) {
    sum_squads(rows_, coefficients, first, end, sums);
    add_club(sums, club_term(events(first, end), sums.expected, log_squad_deviation, log_club_deviation), out);
    first = end;
  }
  out.mirror();
  return out;
}

double NestedObjective::slope_at_no_clubs(const std::vector<double>& coefficients, double log_squad_deviation) const {
  const double variance = std::exp(2 * log_squad_deviation);
  const ArrayXd expected = expected_events(rows_, coefficients);
  const auto all = events(0, rows_.squads());
  const ArrayXd mean = expected * squad_modes(all, expected, variance).exp();
  const ArrayXd narrowed = mean / (1 + variance * mean);
  double slope = 0;
  std::size_t first = 0;
  for (const std::size_t end : club_ends_) {
    const auto from = static_cast<Eigen::Index>(first);
    const auto squads = static_cast<Eigen::Index>(end - first);
    const double off = (all - mean).segment(from, squads).sum();
    slope += (off * off - narrowed.segment(from, squads).sum()) / 2;
    first = end;
  }
  return slope;
}

NestedObjective::Effects NestedObjective::effects(const std::vector<double>& coefficients, double log_squad_deviation,
                                                  double log_club_deviation) const {
  Effects out;
  const ArrayXd expected = expected_events(rows_, coefficients);
  std::size_t first = 0;
  for (const std::size_t end : club_ends_) {
    const auto from = static_cast<Eigen::Index>(first);
    const auto squads = static_cast<Eigen::Index>(end - first);
    const ClubTerm term =
        club_term(events(first, end), expected.segment(from, squads), log_squad_deviation, log_club_deviation);
    out.clubs.push_back({term.club_mode, term.club_variance});
    for (Eigen::Index i = 0; i < squads; ++i) out.squads.push_back({term.squad_modes(i), term.squad_variances(i)});
    first = end;
  }
  return out;
}

}  // namespace lanework::evidence
