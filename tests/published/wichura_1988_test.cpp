// Wichura 1988, Algorithm AS 241, doi 10.2307/2347330: the paper's check values of its double precision
// form, p = 0.25, 0.001 and 1e-20, and well-known quantiles.
#include <gtest/gtest.h>

#include "core/base/elementary.h"

namespace lanework {
namespace {

TEST(Wichura1988, NormalQuantile) {
  EXPECT_NEAR(normal_quantile(0.25), -0.6744897501960817, 1e-15);
  EXPECT_NEAR(normal_quantile(0.001), -3.090232306167814, 1e-14);
  EXPECT_NEAR(normal_quantile(1e-20), -9.262340089798408, 1e-13);
  EXPECT_EQ(normal_quantile(0.5), 0.0);
  EXPECT_NEAR(normal_quantile(0.9), 1.2815515655446004, 1e-15);
  EXPECT_NEAR(normal_quantile(0.975), 1.959963984540054, 1e-14);
}

}  // namespace
}  // namespace lanework
