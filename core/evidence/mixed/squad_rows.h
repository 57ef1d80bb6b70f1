// The rows of a frame laid out for sums over the rows of a squad, each row with a weight of its own: all that a model
// whose effects enter every row of the squad alike has to know of them.
//
// Columns that never change within a squad, such as its age, are held once a squad; of the others the rows of a squad
// stand together, column by column.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/evidence/mixed/frame.h"
#include "core/evidence/mixed/row_loops.h"

namespace lanework::evidence {

class SquadRows {
 public:
  // To work in: one for whoever calls.
  struct Room {
    std::vector<double> rows;
    std::vector<double> columns;
    std::vector<double> squares;
  };

  explicit SquadRows(const Frame& frame);

  [[nodiscard]] std::size_t columns() const { return columns_; }
  [[nodiscard]] std::size_t squads() const { return squad_ends_.size(); }
  [[nodiscard]] std::size_t first(std::size_t squad) const { return squad == 0 ? 0 : squad_ends_[squad - 1]; }
  [[nodiscard]] std::size_t rows(std::size_t squad) const { return squad_ends_[squad] - first(squad); }
  [[nodiscard]] std::size_t most_rows() const { return most_rows_; }
  [[nodiscard]] Room room() const;

  // Logarithms of the events to be expected, without effects; by row, written over.
  void log_means(std::size_t squad, std::span<const double> coefficients, double* out, Room& room) const;
  // Weighted sums of the columns; weights by row, 'sum' that of them all. design: [column], written over.
  void weigh(std::size_t squad, const double* weights, double sum, double* design, Room& room) const;
  // Weighted sums of products of two columns. design: of the same weights, from weigh(). squares: lower triangle row
  // by row, written over. Work: rows x half the square of the columns that change within squads.
  void weigh_squares(std::size_t squad, const double* weights, const double* design, double* squares, Room& room) const;

 private:
  std::size_t columns_;
  std::size_t most_rows_ = 0;
  std::vector<std::size_t> steady_;  // columns
  std::vector<std::size_t> changing_;
  std::vector<std::size_t> squad_ends_;
  std::vector<double> log_hours_;       // by row
  std::vector<double> steady_cells_;    // [squad x steady columns + steady column]
  std::vector<double> changing_cells_;  // [squad][changing column][row]

  [[nodiscard]] RowColumns changing_of(std::size_t squad) const {
    return {changing_cells_.data() + first(squad) * changing_.size(), rows(squad), changing_.size()};
  }
  [[nodiscard]] const double* steady_of(std::size_t squad) const {
    return steady_cells_.data() + squad * steady_.size();
  }
};

}  // namespace lanework::evidence
