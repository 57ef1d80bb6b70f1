#include "core/release/circulation.h"

#include <gtest/gtest.h>

namespace lanework::release {
namespace {

// Two rows, two columns, all sums known: what one cell gains, its neighbours lose.
TEST(Circulation, ATwoByTwoTableMovesByItsSmallestCells) {
  Circulation net(5);
  net.add(0, 1, 5, true);
  net.add(0, 2, 7, true);
  const std::size_t cell = net.add(1, 3, 2, false);
  net.add(1, 4, 3, false);
  net.add(2, 3, 4, false);
  net.add(2, 4, 3, false);
  EXPECT_EQ(net.rise(cell, 100), 3);
  EXPECT_EQ(net.fall(cell, 100), 2);
  EXPECT_EQ(net.rise(cell, 2), 2) << "no further than asked";
}

TEST(Circulation, ALeastHoldsBackTheFallOfItsArcAndTheRiseOfOthers) {
  Circulation net(4);
  const std::size_t one = net.add(0, 1, 3, false);
  const std::size_t other = net.add(0, 2, 4, false);
  const std::size_t last = net.add(1, 3, 3, false);
  net.add(2, 3, 4, false);
  EXPECT_EQ(net.rise(one, 100), 4);
  net.set_least(other, 2);
  EXPECT_EQ(net.rise(one, 100), 2);
  EXPECT_EQ(net.fall(other, 100), 2);
  EXPECT_EQ(net.fall(last, 100), 3);
}

TEST(Circulation, WhatIsKnownDoesNotMove) {
  Circulation net(3);
  const std::size_t known = net.add(0, 1, 3, true);
  net.add(1, 2, 3, false);
  EXPECT_EQ(net.rise(known, 100), 0);
  EXPECT_EQ(net.fall(known, 100), 0);
}

}  // namespace
}  // namespace lanework::release
