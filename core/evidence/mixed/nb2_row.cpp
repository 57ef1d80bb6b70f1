#include "core/evidence/mixed/nb2_row.h"

#include <cmath>

namespace lanework::evidence {

Nb2Row nb2_row(double count, double mean_by_size, double size) {
  // p: the share of the mean in mean + size; all derivatives are of it.
  const double p = mean_by_size / (1 + mean_by_size);
  const double spread = p / (1 + mean_by_size);  // p (1 - p)
  const double lean = 1 - 2 * p;
  const double level = std::log1p(mean_by_size);
  const double both = count + size;
  Nb2Row out;
  // Gamma functions of whole steps apart, as sums: exact also where the size is large.
  double log_steps = 0;
  double first = 0;
  double second = 0;
  for (double k = 0; k < count; ++k) {
    log_steps += std::log1p(k / size);
    first += size / (size + k);
    second += size * k / ((size + k) * (size + k));
  }
  // count x log(size) of the steps and of the mean by the size cancel.
  out.value = log_steps + (count > 0 ? count * std::log(mean_by_size * size) : 0) - both * level;
  out.t1 = count - both * p;
  out.t2 = -both * spread;
  out.t3 = out.t2 * lean;
  out.t4 = out.t2 * (1 - 6 * spread);
  out.s = first - out.t1 - size * level;
  out.s_t1 = -out.t2 - size * p;
  out.s_t2 = -out.t3 - size * spread;
  out.s_t3 = -out.t4 - size * spread * lean;
  out.ss = second + out.t2 + 2 * size * p - size * level;
  out.ss_t1 = out.t3 + 2 * size * spread - size * p;
  out.ss_t2 = out.t4 + size * spread * (2 * lean - 1);
  return out;
}

}  // namespace lanework::evidence
