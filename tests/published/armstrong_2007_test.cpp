// Armstrong LE et al. 2007, doi 10.1249/MSS.0b013e31802fa199, as reprinted: in Fahrenheit to 82, 86 and 90; at each
// step who is not used to heat does less, and from 86.1 nothing.
#include <gtest/gtest.h>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(Armstrong2007, Bands) {
  const BandTable& table = heat_table("college-2007");
  ASSERT_EQ(table.unit, BandUnit::kFahrenheit);
  for (const auto& [value, band] : {std::pair{82.0, 0U}, {82.1, 1U}, {86.0, 1U}, {86.1, 2U}, {90.0, 2U}, {90.1, 3U}})
    EXPECT_EQ(band_of(table, value), band) << value;
  EXPECT_FALSE(table.bands[0].usual.changes());
  EXPECT_TRUE(table.bands[0].unused_to_heat.changes());
  // As long at rest as at work.
  EXPECT_EQ(table.bands[1].unused_to_heat.breaks->longest_stretch, table.bands[1].unused_to_heat.breaks->each);
  EXPECT_TRUE(table.bands[2].unused_to_heat.no_session);
  EXPECT_FALSE(table.bands[2].usual.no_session);
  EXPECT_TRUE(table.bands[3].usual.no_session);
}

}  // namespace
}  // namespace lanework::care::environment::test
