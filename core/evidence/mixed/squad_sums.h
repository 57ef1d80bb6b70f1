// Sums over the rows of a squad, each row counting as its expected events at given coefficients: all that a model whose
// effects enter every row of the squad alike has to know of them.
#pragma once

#include <vector>

#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

struct SquadSums {
  double expected = 0;
  std::vector<double> design;   // [column]
  std::vector<double> squares;  // design times design, lower triangle row by row
};

// One exponential a row.
void sum_squad(const Frame& frame, std::size_t squad, const std::vector<double>& coefficients, SquadSums& sums);

// What does not change with the coefficients.
struct FrameConstants {
  std::vector<double> squad_events;
  std::vector<double> events_by_column;
  double log_likelihood = 0;  // its part that no parameter moves
};
FrameConstants constants_of(const Frame& frame);

}  // namespace lanework::evidence
