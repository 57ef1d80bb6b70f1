// What can be worked out of a table with hidden cells: Fischetti M, Salazar JJ 2001, Management Science 47:1008-1027,
// doi 10.1287/mnsc.47.7.1008.9805. Their example of investments by activity and region, with one cell to be kept and
// three hidden besides. The paper was not at hand: the table stands in programs that follow it; that the bounds are 5
// and 30 is from memory, and by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <utility>
#include <vector>

#include "core/release/circulation.h"

namespace lanework::release {
namespace {

constexpr std::size_t kRows = 3;
constexpr std::size_t kColumns = 3;
constexpr std::int64_t kInvested[kRows][kColumns] = {{20, 50, 10}, {8, 19, 22}, {17, 32, 12}};

struct Table {
  Circulation net{1 + kRows + kColumns};
  std::size_t at[kRows][kColumns] = {};
};

// Rows from a hub, whose sums are known, and each cell to its column, which has what it has.
Table with_hidden(const std::vector<std::pair<std::size_t, std::size_t>>& hidden) {
  Table out;
  for (std::size_t row = 0; row < kRows; ++row) {
    std::int64_t sum = 0;
    for (std::size_t column = 0; column < kColumns; ++column) {
      const bool known = std::find(hidden.begin(), hidden.end(), std::pair{row, column}) == hidden.end();
      out.at[row][column] = out.net.add(1 + row, 1 + kRows + column, kInvested[row][column], known);
      sum += kInvested[row][column];
    }
    out.net.add(0, 1 + row, sum, true);
  }
  return out;
}

TEST(FischettiSalazar2001, OneHiddenCellIsASubtraction) {
  const Table table = with_hidden({{1, 2}});
  EXPECT_EQ(table.net.rise(table.at[1][2], 1000), 0);
  EXPECT_EQ(table.net.fall(table.at[1][2], 1000), 0) << "49 - 19 - 8 = 22";
}

TEST(FischettiSalazar2001, WithThreeMoreItIsBetweenFiveAndThirty) {
  const Table table = with_hidden({{1, 0}, {1, 2}, {2, 0}, {2, 2}});
  EXPECT_EQ(22 - table.net.fall(table.at[1][2], 1000), 5);
  EXPECT_EQ(22 + table.net.rise(table.at[1][2], 1000), 30);
}

}  // namespace
}  // namespace lanework::release
