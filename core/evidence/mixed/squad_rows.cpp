#include "core/evidence/mixed/squad_rows.h"

#include <algorithm>

namespace lanework::evidence {
namespace {

// By column: is every cell that of its squad's first row?
std::vector<char> steady_columns(const Frame& frame) {
  const std::size_t columns = frame.columns();
  std::vector<char> out(columns, 1);
  std::size_t row = 0;
  for (const std::size_t end : frame.squad_ends) {
    const double* first = frame.design.data() + row * columns;
    for (; row < end; ++row) {
      const double* cells = frame.design.data() + row * columns;
      for (std::size_t c = 0; c < columns; ++c) out[c] &= static_cast<char>(cells[c] == first[c]);
    }
  }
  return out;
}

std::size_t in_triangle(std::size_t a, std::size_t b) {
  const std::size_t low = std::min(a, b);
  const std::size_t high = std::max(a, b);
  return high * (high + 1) / 2 + low;
}

}  // namespace

SquadRows::SquadRows(const Frame& frame)
    : columns_(frame.columns()), squad_ends_(frame.squad_ends), log_hours_(frame.log_hours) {
  const std::vector<char> steady = steady_columns(frame);
  for (std::size_t c = 0; c < columns_; ++c) (steady[c] != 0 ? steady_ : changing_).push_back(c);
  steady_cells_.reserve(frame.squads() * steady_.size());
  changing_cells_.resize(frame.rows() * changing_.size());
  std::size_t first = 0;
  for (const std::size_t end : squad_ends_) {
    for (const std::size_t c : steady_) steady_cells_.push_back(frame.design[first * columns_ + c]);
    double* cells = changing_cells_.data() + first * changing_.size();
    for (const std::size_t c : changing_) {
      for (std::size_t row = first; row < end; ++row) *cells++ = frame.design[row * columns_ + c];
    }
    most_rows_ = std::max(most_rows_, end - first);
    first = end;
  }
}

SquadRows::Room SquadRows::room() const {
  const std::size_t columns = changing_.size();
  return {std::vector<double>(most_rows_), std::vector<double>(columns),
          std::vector<double>(columns * (columns + 1) / 2)};
}

void SquadRows::log_means(std::size_t squad, std::span<const double> coefficients, double* out, Room& room) const {
  const double* own = steady_of(squad);
  double level = 0;
  for (std::size_t k = 0; k < steady_.size(); ++k) level += own[k] * coefficients[steady_[k]];
  for (std::size_t k = 0; k < changing_.size(); ++k) room.columns[k] = coefficients[changing_[k]];
  add_columns(changing_of(squad), room.columns.data(), log_hours_.data() + first(squad), level, out);
}

void SquadRows::weigh(std::size_t squad, const double* weights, double sum, double* design, Room& room) const {
  const double* own = steady_of(squad);
  for (std::size_t k = 0; k < steady_.size(); ++k) design[steady_[k]] = own[k] * sum;
  weigh_columns(changing_of(squad), weights, room.columns.data());
  for (std::size_t k = 0; k < changing_.size(); ++k) design[changing_[k]] = room.columns[k];
}

void SquadRows::weigh_squares(std::size_t squad, const double* weights, const double* design, double* squares,
                              Room& room) const {
  const double* own = steady_of(squad);
  // A steady column times any other is that other's sum, times the steady one.
  for (std::size_t k = 0; k < steady_.size(); ++k) {
    for (std::size_t l = 0; l <= k; ++l) squares[in_triangle(steady_[k], steady_[l])] = design[steady_[k]] * own[l];
    for (const std::size_t c : changing_) squares[in_triangle(c, steady_[k])] = design[c] * own[k];
  }
  weigh_products(changing_of(squad), weights, room.rows.data(), room.squares.data());
  const double* product = room.squares.data();
  for (std::size_t k = 0; k < changing_.size(); ++k) {
    for (std::size_t l = 0; l <= k; ++l) squares[in_triangle(changing_[k], changing_[l])] = *product++;
  }
}

}  // namespace lanework::evidence
