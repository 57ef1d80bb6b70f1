// Bands of wet-bulb globe temperature for exercising children, older policy of a paediatric academy (Pediatrics): below
// 24 all allowed; 24.0 to 25.9 longer rests; 26 to 29 who is not used to heat stops, the others do less; above 29
// called off.
#include <gtest/gtest.h>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(Pediatrics2000, Bands) {
  const BandTable& table = heat_table("children");
  ASSERT_EQ(table.unit, BandUnit::kCelsius);
  ASSERT_EQ(table.standing, Standing::kRead);
  EXPECT_EQ(band_of(table, 23.9), 0U);
  EXPECT_EQ(band_of(table, 24.0), 1U);
  EXPECT_EQ(band_of(table, 25.9), 1U);
  EXPECT_EQ(band_of(table, 26.0), 2U);
  EXPECT_EQ(band_of(table, 29.0), 2U);
  EXPECT_EQ(band_of(table, 29.1), 3U);
  EXPECT_FALSE(table.bands[0].usual.changes());
  EXPECT_TRUE(table.bands[1].usual.breaks);
  EXPECT_FALSE(table.bands[2].usual.no_session);
  EXPECT_TRUE(table.bands[2].unused_to_heat.no_session);
  EXPECT_TRUE(table.bands[3].usual.no_session);
}

}  // namespace
}  // namespace lanework::care::environment::test
