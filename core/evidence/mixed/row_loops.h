// The inner loops over the rows of a squad, in the widest registers that the machine has: compiled for several kinds of
// processor, and the right one taken when the program starts. Sums are added up in no fixed order, so that their last
// digits may differ from machine to machine.
#pragma once

#include <cstddef>
#include <span>

namespace lanework::evidence {

// Columns of numbers, each of as many rows, one after the other.
struct RowColumns {
  const double* cells = nullptr;
  std::size_t rows = 0;
  std::size_t columns = 0;
};

// out[row] = start[row] + level + sum of coefficients[column] x cells[column, row].
void add_columns(const RowColumns& columns, const double* coefficients, const double* start, double level, double* out);
// numbers[i] = exp(numbers[i] - less); returns their sum.
double exponentials(std::span<double> numbers, double less);
// sums[column]: of weights x cells.
void weigh_columns(const RowColumns& columns, const double* weights, double* sums);
// squares, lower triangle row by row: sums of weights x cells of one column x cells of another. room: of as many rows.
void weigh_products(const RowColumns& columns, const double* weights, double* room, double* squares);

// Negative binomial counts at means 'factor' times those given, divided by the size. both: count + size. p is the share
// of the mean in mean + size, q the rest.
struct ShareSums {
  double p = 0;        // sum of both x p
  double spread = 0;   // of both x p q
  double leaning = 0;  // of both x p q (q - p)
};
ShareSums sum_shares(std::span<const double> means_by_size, const double* both, double factor);

// The same rows looked at closely; each pointer to as many numbers, written over.
struct ShareRows {
  double* p;
  double* spread;  // p q
  double* lean;    // q - p
  double* t2;      // -both p q: second derivative of the log likelihood by the logarithm of the mean; then
  double* t3;      // the third
  double* t4;      // and fourth
};
struct ShareRowSums {
  double t1 = 0;  // without the counts
  double t2 = 0;
  double t3 = 0;
  double t4 = 0;
  double p = 0;
  double spread = 0;
  double leaning = 0;     // spread x lean
  double level = 0;       // log(1 + mean / size)
  double both_level = 0;  // times both
};
ShareRowSums share_rows(std::span<const double> means_by_size, const double* both, double factor, const ShareRows& out);
// out[row] = p + spread x (lambda - n x lean).
void size_weights(const ShareRows& rows, std::size_t count, double lambda, double n, double* out);
// out[row] = a + lambda x b - n x c.
void combine(const double* a, const double* b, const double* c, std::size_t count, double lambda, double n,
             double* out);

}  // namespace lanework::evidence
