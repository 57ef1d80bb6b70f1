// Known answers of Philox4x32-10: the vectors published with Salmon et al. 2011
// (doi 10.1145/2063384.2063405), file kat_vectors of their release.
#include "core/base/random.h"

#include <gtest/gtest.h>

#include <cmath>

namespace lanework {
namespace {

TEST(Philox, GivesThePublishedKnownAnswers) {
  EXPECT_EQ(philox({0, 0, 0, 0}, {0, 0}), (RandomBlock{0x6627e8d5U, 0xe169c58dU, 0xbc57ac4cU, 0x9b00dbd8U}));
  EXPECT_EQ(philox({0xffffffffU, 0xffffffffU, 0xffffffffU, 0xffffffffU}, {0xffffffffU, 0xffffffffU}),
            (RandomBlock{0x408f276dU, 0x41c83b0eU, 0xa20bc7c6U, 0x6d5451fdU}));
  EXPECT_EQ(philox({0x243f6a88U, 0x85a308d3U, 0x13198a2eU, 0x03707344U}, {0xa4093822U, 0x299f31d0U}),
            (RandomBlock{0xd16cfe09U, 0x94fdccebU, 0x5001e420U, 0x24126ea1U}));
}

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
