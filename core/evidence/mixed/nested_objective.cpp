#include "core/evidence/mixed/nested_objective.h"

#include <cmath>

#include "core/evidence/mixed/club_term.h"
#include "core/evidence/mixed/squad_mode.h"

namespace lanework::evidence {
namespace {

// The squads of a club, and what their rows sum to.
struct ClubRows {
  std::vector<ClubSquad> squads;
  std::vector<SquadSums> sums;
};

void sum_club(SquadRows& rows, const FrameConstants& constants, std::size_t first, std::size_t end,
              const std::vector<double>& coefficients, ClubRows& club) {
  club.squads.clear();
  if (club.sums.size() < end - first) club.sums.resize(end - first);
  for (std::size_t squad = first; squad < end; ++squad) {
    SquadSums& sums = club.sums[squad - first];
    rows.sum(squad, coefficients, sums);
    club.squads.push_back({constants.squad_events[squad], std::log(sums.expected)});
  }
}

// Weighted sums of the squads' mean designs: what couples the squads of a club.
struct ClubDesign {
  std::vector<double> rank;
  std::vector<double> move;
  std::vector<double> beside;
};

void add_squad(const SquadSums& sums, const ClubTerm& term, std::size_t i, ObjectiveValue& out, ClubDesign& design) {
  const std::size_t columns = sums.design.size();
  const double* squares = sums.squares.data();
  for (std::size_t c = 0; c < columns; ++c) {
    const double own = sums.design[c] / sums.expected;
    out.gradient[c] += term.slope[i] * own;
    design.rank[c] += term.rank[i] * own;
    design.move[c] += term.move[i] * own;
    design.beside[c] += term.beside[i] * own;
    for (std::size_t d = 0; d <= c; ++d) {
      const double other = sums.design[d] / sums.expected;
      out.bend(c, d) += term.slope[i] * (*squares++ / sums.expected) + (term.own[i] - term.slope[i]) * own * other;
    }
    out.bend(columns + kSquads, c) += term.by_both[kSquads][i] * own;
    out.bend(columns + kClubs, c) += term.by_both[kClubs][i] * own;
  }
}

void add_club(const ClubTerm& term, const ClubDesign& design, ObjectiveValue& out) {
  const std::size_t columns = design.rank.size();
  out.log_likelihood += term.log_likelihood;
  for (std::size_t c = 0; c < columns; ++c) {
    for (std::size_t d = 0; d <= c; ++d) {
      out.bend(c, d) += term.rank_weight * design.rank[c] * design.rank[d] + design.beside[c] * design.move[d] +
                        design.move[c] * design.beside[d] + term.bend * design.move[c] * design.move[d];
    }
  }
  for (const std::size_t which : {kSquads, kClubs}) out.gradient[columns + which] += term.by_deviation[which];
  out.bend(columns + kSquads, columns + kSquads) += term.by_deviations[0];
  out.bend(columns + kClubs, columns + kSquads) += term.by_deviations[1];
  out.bend(columns + kClubs, columns + kClubs) += term.by_deviations[2];
}

}  // namespace

NestedObjective::NestedObjective(const Frame& frame) : frame_(frame), constants_(constants_of(frame)), rows_(frame) {}

ObjectiveValue NestedObjective::at(const std::vector<double>& coefficients, double log_squad_deviation,
                                   double log_club_deviation) const {
  const std::size_t columns = frame_.columns();
  ObjectiveValue out(columns + 2);
  out.log_likelihood = constants_.log_likelihood;
  for (std::size_t c = 0; c < columns; ++c) {
    out.log_likelihood += constants_.events_by_column[c] * coefficients[c];
    out.gradient[c] = constants_.events_by_column[c];
  }
  ClubRows club;
  std::size_t first = 0;
  for (const std::size_t end : frame_.club_ends) {
    sum_club(rows_, constants_, first, end, coefficients, club);
    const ClubTerm term = club_term(club.squads, log_squad_deviation, log_club_deviation);
    const std::vector<double> none(columns, 0);
    ClubDesign design{none, none, none};
    for (std::size_t i = 0; i < club.squads.size(); ++i) add_squad(club.sums[i], term, i, out, design);
    add_club(term, design, out);
    first = end;
  }
  out.mirror();
  return out;
}

double NestedObjective::slope_at_no_clubs(const std::vector<double>& coefficients, double log_squad_deviation) const {
  const double variance = std::exp(2 * log_squad_deviation);
  ClubRows club;
  double slope = 0;
  std::size_t first = 0;
  for (const std::size_t end : frame_.club_ends) {
    sum_club(rows_, constants_, first, end, coefficients, club);
    double off = 0;
    double narrowed = 0;
    for (const ClubSquad& squad : club.squads) {
      const double mean = std::exp(squad.log_expected + squad_mode(squad.events, squad.log_expected, variance));
      off += squad.events - mean;
      narrowed += mean / (1 + variance * mean);
    }
    slope += (off * off - narrowed) / 2;
    first = end;
  }
  return slope;
}

NestedObjective::Effects NestedObjective::effects(const std::vector<double>& coefficients, double log_squad_deviation,
                                                  double log_club_deviation) const {
  Effects out;
  const double squad_variance = std::exp(2 * log_squad_deviation);
  ClubRows club;
  std::size_t first = 0;
  for (const std::size_t end : frame_.club_ends) {
    sum_club(rows_, constants_, first, end, coefficients, club);
    const ClubTerm term = club_term(club.squads, log_squad_deviation, log_club_deviation);
    out.clubs.push_back({term.club_mode, term.club_variance});
    for (std::size_t i = 0; i < club.squads.size(); ++i) {
      // The squad's own, and what it gives way as the club's effect moves.
      const double mode = term.squad_modes[i];
      const double mean = std::exp(club.squads[i].log_expected + term.club_mode + mode);
      const double curved = 1 + squad_variance * mean;
      const double moved = squad_variance * mean / curved;
      out.squads.push_back({mode, squad_variance / curved + moved * moved * term.club_variance});
    }
    first = end;
  }
  return out;
}

}  // namespace lanework::evidence
