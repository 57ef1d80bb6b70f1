// Streams of random numbers; the generator itself is held against tests/published/salmon_2011_test.cpp.
#include "core/base/random.h"

#include <gtest/gtest.h>

#include <cmath>

namespace lanework {
namespace {

TEST(Uniform, StaysInsideZeroAndOne) {
  EXPECT_GT(uniform_from(0), 0.0);
  EXPECT_LT(uniform_from(0xffffffffU), 1.0);
  EXPECT_DOUBLE_EQ(uniform_from(0x80000000U), 0.5 + 0x1p-33);
}

TEST(NormalStream, HasTheMomentsOfTheStandardNormal) {
  NormalStream stream(random_key(20261126), 3, 1, 4);
  constexpr int kDraws = 200000;
  double sum = 0;
  double squares = 0;
  double fourth = 0;
  for (int i = 0; i < kDraws; ++i) {
    const double z = stream.next();
    sum += z;
    squares += z * z;
    fourth += z * z * z * z;
  }
  // Five standard errors of each moment: 1, sqrt(2), sqrt(96) over sqrt(n).
  EXPECT_NEAR(sum / kDraws, 0.0, 5 / std::sqrt(kDraws));
  EXPECT_NEAR(squares / kDraws, 1.0, 5 * std::sqrt(2.0 / kDraws));
  EXPECT_NEAR(fourth / kDraws, 3.0, 5 * std::sqrt(96.0 / kDraws));
}

TEST(NormalStream, IsAFunctionOfItsName) {
  NormalStream a(random_key(7), 1, 2, 3);
  NormalStream b(random_key(7), 1, 2, 3);
  NormalStream other(random_key(7), 1, 2, 4);
  bool differs = false;
  for (int i = 0; i < 100; ++i) {
    const double z = a.next();
    EXPECT_EQ(z, b.next());
    differs = differs || z != other.next();
  }
  EXPECT_TRUE(differs);
}

}  // namespace
}  // namespace lanework
