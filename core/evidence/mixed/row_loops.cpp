// Compiled so that sums may be reordered (CMakeLists.txt): nothing here may look for what is not a number.
#include "core/evidence/mixed/row_loops.h"

#include <cmath>

// The functions of each kind of processor; not where memory is being checked, whose start the choice would come before.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__)
#define LANEWORK_WIDEST __attribute__((target_clones("arch=x86-64-v4", "arch=x86-64-v3", "default")))
#else
#define LANEWORK_WIDEST
#endif

namespace lanework::evidence {

LANEWORK_WIDEST
void add_columns(const RowColumns& columns, const double* coefficients, const double* start, double level,
                 double* out) {
  const std::size_t rows = columns.rows;
  for (std::size_t row = 0; row < rows; ++row) out[row] = start[row] + level;
  for (std::size_t c = 0; c < columns.columns; ++c) {
    const double* cells = columns.cells + c * rows;
    const double coefficient = coefficients[c];
    for (std::size_t row = 0; row < rows; ++row) out[row] += coefficient * cells[row];
  }
}

LANEWORK_WIDEST
double exponentials(std::span<double> numbers, double less) {
  double sum = 0;
  for (double& number : numbers) {
    number = std::exp(number - less);
    sum += number;
  }
  return sum;
}

LANEWORK_WIDEST
void weigh_columns(const RowColumns& columns, const double* weights, double* sums) {
  const std::size_t rows = columns.rows;
  std::size_t c = 0;
  for (; c + 2 <= columns.columns; c += 2) {
    const double* one = columns.cells + c * rows;
    const double* two = one + rows;
    double first = 0;
    double second = 0;
    for (std::size_t row = 0; row < rows; ++row) {
      first += weights[row] * one[row];
      second += weights[row] * two[row];
    }
    sums[c] = first;
    sums[c + 1] = second;
  }
  for (; c < columns.columns; ++c) {
    const double* cells = columns.cells + c * rows;
    double sum = 0;
    for (std::size_t row = 0; row < rows; ++row) sum += weights[row] * cells[row];
    sums[c] = sum;
  }
}

LANEWORK_WIDEST
void weigh_products(const RowColumns& columns, const double* weights, double* room, double* squares) {
  const std::size_t rows = columns.rows;
  for (std::size_t c = 0; c < columns.columns; ++c) {
    const double* cells = columns.cells + c * rows;
    for (std::size_t row = 0; row < rows; ++row) room[row] = weights[row] * cells[row];
    std::size_t d = 0;
    for (; d + 2 <= c + 1; d += 2) {
      const double* one = columns.cells + d * rows;
      const double* two = one + rows;
      double first = 0;
      double second = 0;
      for (std::size_t row = 0; row < rows; ++row) {
        first += room[row] * one[row];
        second += room[row] * two[row];
      }
      squares[d] = first;
      squares[d + 1] = second;
    }
    if (d <= c) {
      const double* other = columns.cells + d * rows;
      double sum = 0;
      for (std::size_t row = 0; row < rows; ++row) sum += room[row] * other[row];
      squares[d] = sum;
    }
    squares += c + 1;
  }
}

LANEWORK_WIDEST
ShareSums sum_shares(std::span<const double> means_by_size, const double* both, double factor) {
  double p_sum = 0;
  double spread_sum = 0;
  double leaning_sum = 0;
  for (std::size_t row = 0; row < means_by_size.size(); ++row) {
    const double by_size = means_by_size[row] * factor;
    const double q = 1 / (1 + by_size);
    const double p = by_size * q;
    const double part = both[row] * p;
    p_sum += part;
    spread_sum += part * q;
    leaning_sum += part * q * (q - p);
  }
  return {p_sum, spread_sum, leaning_sum};
}

LANEWORK_WIDEST
ShareRowSums share_rows(std::span<const double> means_by_size, const double* both, double factor,
                        const ShareRows& out) {
  const std::size_t count = means_by_size.size();
  const double* __restrict const means = means_by_size.data();
  const double* __restrict const sums = both;
  double* __restrict const shares = out.p;
  double* __restrict const spreads = out.spread;
  double* __restrict const leans = out.lean;
  double* __restrict const second = out.t2;
  double* __restrict const third = out.t3;
  double* __restrict const fourth = out.t4;
  for (std::size_t row = 0; row < count; ++row) {
    const double by_size = means[row] * factor;
    const double q = 1 / (1 + by_size);
    const double p = by_size * q;
    shares[row] = p;
    spreads[row] = p * q;
    leans[row] = q - p;
  }
  for (std::size_t row = 0; row < count; ++row) {
    const double spread = spreads[row];
    const double bend = -sums[row] * spread;
    second[row] = bend;
    third[row] = bend * leans[row];
    fourth[row] = bend * (1 - 6 * spread);
  }
  double t1 = 0;
  double p_sum = 0;
  double spread_sum = 0;
  double leaning = 0;
  for (std::size_t row = 0; row < count; ++row) {
    t1 -= both[row] * shares[row];
    p_sum += shares[row];
    spread_sum += spreads[row];
    leaning += spreads[row] * leans[row];
  }
  double t2 = 0;
  double t3 = 0;
  double t4 = 0;
  for (std::size_t row = 0; row < count; ++row) {
    t2 += second[row];
    t3 += third[row];
    t4 += fourth[row];
  }
  double level_sum = 0;
  double both_level = 0;
  for (std::size_t row = 0; row < count; ++row) {
    const double level = std::log1p(means[row] * factor);
    level_sum += level;
    both_level += both[row] * level;
  }
  return {t1, t2, t3, t4, p_sum, spread_sum, leaning, level_sum, both_level};
}

LANEWORK_WIDEST
void size_weights(const ShareRows& rows, std::size_t count, double lambda, double n, double* out) {
  for (std::size_t row = 0; row < count; ++row)
    out[row] = rows.p[row] + rows.spread[row] * (lambda - n * rows.lean[row]);
}

LANEWORK_WIDEST
void combine(const double* a, const double* b, const double* c, std::size_t count, double lambda, double n,
             double* out) {
  for (std::size_t row = 0; row < count; ++row) out[row] = a[row] + lambda * b[row] - n * c[row];
}

}  // namespace lanework::evidence
