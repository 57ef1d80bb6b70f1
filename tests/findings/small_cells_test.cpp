#include "core/findings/small_cells.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace lanework::findings {
namespace {

TEST(SmallCells, TheNextSmallestHidesTheOnlyOne) {
  EXPECT_EQ(withheld_rows({12, 3, 30, 0, 7}, Reader::kBoard), (std::vector<bool>{false, true, false, false, true}));
  EXPECT_EQ(withheld_rows({12, 3, 30, 2}, Reader::kBoard), (std::vector<bool>{false, true, false, true}));
  EXPECT_EQ(withheld_rows({12, 3, 30}, Reader::kLead), (std::vector<bool>{false, false, false}));
  EXPECT_EQ(withheld_rows({3, 0}, Reader::kBoard), (std::vector<bool>{true, false}));
}

// No count of 1 to 4 is shown, none of 0 is hidden, and no hidden one can be found from the sum.
RC_GTEST_PROP(SmallCells, NoneCanBeWorkedOut, (const std::vector<unsigned char>& drawn)) {
  std::vector<int> counts;
  for (const unsigned char one : drawn) counts.push_back(one % 20);
  const std::vector<bool> hidden = withheld_rows(counts, Reader::kBoard);
  int above = 0;
  for (std::size_t row = 0; row < counts.size(); ++row) {
    RC_ASSERT(counts[row] == 0 || counts[row] >= kSmallCell || hidden[row]);
    RC_ASSERT(counts[row] > 0 || !hidden[row]);
    above += counts[row] > 0 ? 1 : 0;
  }
  const auto withheld = std::count(hidden.begin(), hidden.end(), true);
  RC_ASSERT(withheld != 1 || above == 1);
}

}  // namespace
}  // namespace lanework::findings
