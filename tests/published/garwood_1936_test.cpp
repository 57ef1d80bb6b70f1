// Exact limits of a Poisson mean: Garwood F 1936, Biometrika 28:437-442, doi 10.1093/biomet/28.3-4.437. His table was
// not at hand: the values are R's poisson.test (4.2.2), and the printed ones of a handbook from memory. Mid-P limits
// likewise; the ratio 4 observed to 3.3 expected, 0.38 to 2.9 and p 0.657, is printed in the documentation of a general
// epidemiology package.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/evidence/poisson_limits.h"

namespace lanework::evidence {
namespace {

struct Row {
  int count;
  Interval exact;
  Interval mid_p;
};
constexpr std::array<Row, 9> kRows = {{{0, {0, 3.688879}, {0, 2.995732}},
                                       {1, {0.025318, 5.571643}, {0.050020, 4.931861}},
                                       {2, {0.242209, 7.224688}, {0.335329, 6.607960}},
                                       {5, {1.623486, 11.668332}, {1.831995, 11.082416}},
                                       {10, {4.795389, 18.390356}, {5.079522, 17.824854}},
                                       {20, {12.216520, 30.888378}, {12.559738, 30.339601}},
                                       {30, {20.240874, 42.826865}, {20.611522, 42.286139}},
                                       {50, {37.110964, 65.918767}, {37.509800, 65.386518}},
                                       {100, {81.363991, 121.626794}, {81.791821, 121.103491}}}};

TEST(Garwood1936, ExactAndMidPLimits) {
  for (const Row& row : kRows) {
    const Interval exact = exact_limits(row.count, 0.95);
    EXPECT_NEAR(exact.low, row.exact.low, 5e-7) << row.count;
    EXPECT_NEAR(exact.high, row.exact.high, 5e-7) << row.count;
    const Interval mid_p = mid_p_limits(row.count, 0.95);
    EXPECT_NEAR(mid_p.low, row.mid_p.low, 5e-7) << row.count;
    EXPECT_NEAR(mid_p.high, row.mid_p.high, 5e-7) << row.count;
  }
}

TEST(Garwood1936, OtherLevels) {
  EXPECT_NEAR(exact_limits(0, 0.90).high, 2.995732, 5e-7);
  EXPECT_NEAR(exact_limits(5, 0.90).low, 1.970150, 5e-7);
  EXPECT_NEAR(exact_limits(20, 0.90).high, 29.062019, 5e-7);
}

TEST(Garwood1936, FourObservedToExpected) {
  constexpr double kExpected = 3.3;
  const Interval limits = mid_p_limits(4, 0.95);
  EXPECT_NEAR(limits.low / kExpected, 0.38, 0.006);
  EXPECT_NEAR(limits.high / kExpected, 2.9, 0.03);
}

}  // namespace
}  // namespace lanework::evidence
