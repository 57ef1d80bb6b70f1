// Funnel limits: Spiegelhalter DJ 2005, Stat Med 24:1185-1202, doi 10.1002/sim.1970. The formula from memory, the
// values by R 4.2.2 from it: a second computation, not a printed table.
#include <gtest/gtest.h>

#include <array>

#include "core/evidence/funnel.h"

namespace lanework::evidence {
namespace {

struct Row {
  double expected;
  std::array<double, 4> limits;  // 0.1 %, 2.5 %, 97.5 %, 99.9 %
};
constexpr std::array<double, 4> kShares = {0.001, 0.025, 0.975, 0.999};
constexpr std::array<Row, 5> kRows = {{{5, {0, 0.108413, 1.875312, 2.554271}},
                                       {10, {0.122053, 0.377519, 1.615995, 2.066200}},
                                       {20, {0.358459, 0.560250, 1.437288, 1.735676}},
                                       {50, {0.582456, 0.722434, 1.276610, 1.455028}},
                                       {100, {0.700653, 0.803663, 1.195809, 1.318048}}}};

TEST(Spiegelhalter2005, ExactLimits) {
  for (const Row& row : kRows) {
    for (std::size_t i = 0; i < kShares.size(); ++i)
      EXPECT_NEAR(funnel_limit(row.expected, kShares[i]), row.limits[i], 1e-6) << row.expected;
  }
}

}  // namespace
}  // namespace lanework::evidence
