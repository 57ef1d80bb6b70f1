// The log likelihood of one negative binomial count whose variance is mean + mean^2 / size, and its derivatives in the
// logarithms of the mean (t) and of the size.
#pragma once

namespace lanework::evidence {

struct Nb2Row {
  double value = 0;  // less the logarithm of the count's factorial
  // By t, once to four times.
  double t1 = 0;
  double t2 = 0;
  double t3 = 0;
  double t4 = 0;
  // By the size, and then by t.
  double s = 0;
  double s_t1 = 0;
  double s_t2 = 0;
  double s_t3 = 0;
  // By the size twice, and then by t.
  double ss = 0;
  double ss_t1 = 0;
  double ss_t2 = 0;
};

// mean_by_size: the mean divided by the size. count: a whole number, 0 or more; work grows with it.
Nb2Row nb2_row(double count, double mean_by_size, double size);

}  // namespace lanework::evidence
