// Sums over the rows of a squad, each row counting as its expected events at given coefficients: all that a model whose
// effects enter every row of the squad alike has to know of them.
#pragma once

#include <cstddef>
#include <vector>

#include "core/evidence/mixed/frame.h"

namespace lanework::evidence {

struct SquadSums {
  double expected = 0;
  std::vector<double> design;   // [column]
  std::vector<double> squares;  // design times design, lower triangle row by row
};

// The rows of a frame laid out for these sums: columns that never change within a squad, such as its age, are held once
// a squad; of the others the rows of a squad stand together, column by column.
class SquadRows {
 public:
  explicit SquadRows(const Frame& frame);

  // One exponential a row, and half the square of the columns that change within squads.
  void sum(std::size_t squad, const std::vector<double>& coefficients, SquadSums& sums);

 private:
  std::size_t columns_;
  std::vector<std::size_t> steady_;  // columns
  std::vector<std::size_t> changing_;
  std::vector<std::size_t> squad_ends_;
  std::vector<double> log_hours_;       // by row
  std::vector<double> steady_cells_;    // [squad x steady columns + steady column]
  std::vector<double> changing_cells_;  // [squad][changing column][row]
  std::vector<double> means_;           // room to work in
  std::vector<double> weighted_;
};

// What does not change with the coefficients.
struct FrameConstants {
  std::vector<double> squad_events;
  std::vector<double> events_by_column;
  double log_likelihood = 0;  // its part that no parameter moves
};
FrameConstants constants_of(const Frame& frame);

}  // namespace lanework::evidence
