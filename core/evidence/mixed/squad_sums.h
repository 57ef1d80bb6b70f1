// Sums over the rows of squads, each row counting as its expected events at given coefficients; several squads side by
// side, so that what follows can be done for all of them at once.
#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <vector>

#include "core/evidence/mixed/squad_rows.h"

namespace lanework::evidence {

struct SquadSums {
  Eigen::ArrayXd expected;  // by squad
  Eigen::ArrayXXd design;   // [column, squad]: mean of the column, events as weights
  Eigen::ArrayXXd squares;  // [lower triangle row by row, squad]: of two columns' products
};

// Of the squads from 'first' to before 'end'; written over 'out'. One exponential a row.
void sum_squads(const SquadRows& rows, const std::vector<double>& coefficients, std::size_t first, std::size_t end,
                SquadSums& out);

// Expected events alone, of all squads.
Eigen::ArrayXd expected_events(const SquadRows& rows, const std::vector<double>& coefficients);

}  // namespace lanework::evidence
