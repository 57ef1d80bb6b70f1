// An institution's ladder by wind chill in Fahrenheit, read at second hand: 30 and more low; to 20 extra layers and
// warming up again; to 10 at most 45 minutes; 10 and less stop. What stands on a step belongs to the more careful side.
#include <gtest/gtest.h>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(ColdLadder, Steps) {
  const BandTable& table = *shipped_tables().cold.find("general");
  for (const auto& [value, band] :
       {std::pair{60.0, 0U}, {30.0, 0U}, {29.9, 1U}, {20.1, 1U}, {20.0, 2U}, {10.1, 2U}, {10.0, 3U}, {-40.0, 3U}})
    EXPECT_EQ(band_of(table, value), band) << value;
  EXPECT_FALSE(table.bands[0].usual.changes());
  EXPECT_EQ(table.bands[2].usual.most_time, Seconds(45 * 60));
  EXPECT_TRUE(table.bands[3].usual.no_session);
}

}  // namespace
}  // namespace lanework::care::environment::test
