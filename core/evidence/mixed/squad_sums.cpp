#include "core/evidence/mixed/squad_sums.h"

#include <Eigen/Core>
#include <algorithm>
#include <cmath>

namespace lanework::evidence {
namespace {

using Rows = Eigen::Map<Eigen::ArrayXd>;
using ConstRows = Eigen::Map<const Eigen::ArrayXd>;

// Is every cell of the column that of its squad's first row?
bool is_steady(const Frame& frame, std::size_t column) {
  std::size_t row = 0;
  for (const std::size_t end : frame.squad_ends) {
    const double first = frame.design[row * frame.columns() + column];
    for (; row < end; ++row)
      if (frame.design[row * frame.columns() + column] != first) return false;
  }
  return true;
}

// Logarithms of factorials; small counts, which are nearly all, are looked up.
class LogFactorials {
 public:
  double of(double count) {
    if (count >= static_cast<double>(kKept)) return std::lgamma(count + 1);
    const auto at = static_cast<std::size_t>(count);
    while (known_.size() <= at) known_.push_back(std::lgamma(static_cast<double>(known_.size()) + 1));
    return known_[at];
  }

 private:
  static constexpr std::size_t kKept = 256;
  std::vector<double> known_;
};

}  // namespace

FrameConstants constants_of(const Frame& frame) {
  FrameConstants out;
  out.events_by_column.assign(frame.columns(), 0);
  LogFactorials factorials;
  std::size_t row = 0;
  for (const std::size_t end : frame.squad_ends) {
    double events = 0;
    for (; row < end; ++row) {
      const double own = frame.events[row];
      if (own == 0) continue;
      events += own;
      out.log_likelihood += own * frame.log_hours[row] - factorials.of(own);
      const double* x = frame.design.data() + row * frame.columns();
      for (std::size_t c = 0; c < frame.columns(); ++c) out.events_by_column[c] += own * x[c];
    }
    out.squad_events.push_back(events);
  }
  return out;
}

SquadRows::SquadRows(const Frame& frame)
    : columns_(frame.columns()), squad_ends_(frame.squad_ends), log_hours_(frame.log_hours) {
  for (std::size_t c = 0; c < columns_; ++c) (is_steady(frame, c) ? steady_ : changing_).push_back(c);
  steady_cells_.reserve(frame.squads() * steady_.size());
  changing_cells_.reserve(frame.rows() * changing_.size());
  std::size_t first = 0;
  std::size_t most = 0;
  for (const std::size_t end : squad_ends_) {
    for (const std::size_t c : steady_) steady_cells_.push_back(frame.design[first * columns_ + c]);
    for (const std::size_t c : changing_) {
      for (std::size_t row = first; row < end; ++row) changing_cells_.push_back(frame.design[row * columns_ + c]);
    }
    most = std::max(most, end - first);
    first = end;
  }
  means_.resize(most);
  weighted_.resize(most);
}

void SquadRows::sum(std::size_t squad, const std::vector<double>& coefficients, SquadSums& sums) {
  const std::size_t first = squad == 0 ? 0 : squad_ends_[squad - 1];
  const auto rows = static_cast<Eigen::Index>(squad_ends_[squad] - first);
  const double* own = steady_cells_.data() + squad * steady_.size();
  const double* cells = changing_cells_.data() + first * changing_.size();
  const auto column = [&](std::size_t k) { return ConstRows(cells + static_cast<Eigen::Index>(k) * rows, rows); };
  double level = 0;
  for (std::size_t k = 0; k < steady_.size(); ++k) level += own[k] * coefficients[steady_[k]];
  Rows means(means_.data(), rows);
  Rows weighted(weighted_.data(), rows);
  means = ConstRows(log_hours_.data() + first, rows) + level;
  for (std::size_t k = 0; k < changing_.size(); ++k) means += coefficients[changing_[k]] * column(k);
  means = means.exp();
  sums.expected = means.sum();
  sums.design.assign(columns_, 0);
  sums.squares.assign(columns_ * (columns_ + 1) / 2, 0);
  const auto square = [&](std::size_t c, std::size_t d) -> double& {
    return sums.squares[std::max(c, d) * (std::max(c, d) + 1) / 2 + std::min(c, d)];
  };
  for (std::size_t k = 0; k < steady_.size(); ++k) {
    const double expected = own[k] * sums.expected;
    sums.design[steady_[k]] = expected;
    for (std::size_t l = 0; l <= k; ++l) square(steady_[k], steady_[l]) = expected * own[l];
  }
  for (std::size_t k = 0; k < changing_.size(); ++k) {
    weighted = means * column(k);
    const double sum = weighted.sum();
    sums.design[changing_[k]] = sum;
    for (std::size_t l = 0; l < steady_.size(); ++l) square(changing_[k], steady_[l]) = sum * own[l];
    for (std::size_t l = 0; l <= k; ++l) square(changing_[k], changing_[l]) = (weighted * column(l)).sum();
  }
}

}  // namespace lanework::evidence
