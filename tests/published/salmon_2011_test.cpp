// Salmon, Moraes, Dror, Shaw 2011, doi 10.1145/2063384.2063405: the known answers published with the paper
// for Philox4x32 with ten rounds (counters and keys all zero, all one, and digits of pi).
#include <gtest/gtest.h>

#include "core/base/random.h"

namespace lanework {
namespace {

TEST(Salmon2011, Philox4x32With10Rounds) {
  EXPECT_EQ(philox({0, 0, 0, 0}, {0, 0}), (RandomBlock{0x6627e8d5U, 0xe169c58dU, 0xbc57ac4cU, 0x9b00dbd8U}));
  EXPECT_EQ(philox({0xffffffffU, 0xffffffffU, 0xffffffffU, 0xffffffffU}, {0xffffffffU, 0xffffffffU}),
            (RandomBlock{0x408f276dU, 0x41c83b0eU, 0xa20bc7c6U, 0x6d5451fdU}));
  EXPECT_EQ(philox({0x243f6a88U, 0x85a308d3U, 0x13198a2eU, 0x03707344U}, {0xa4093822U, 0x299f31d0U}),
            (RandomBlock{0xd16cfe09U, 0x94fdccebU, 0x5001e420U, 0x24126ea1U}));
}

}  // namespace
}  // namespace lanework
