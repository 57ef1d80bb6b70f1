// The ladder of a state school association of the United States: breaks of an hour, hours at most, none above 92 F.
#include <gtest/gtest.h>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(StateSchoolLadder, Steps) {
  const BandTable& table = heat_table("united-states-school");
  for (const auto& [value, band] :
       {std::pair{81.9, 0U}, {82.0, 1U}, {86.9, 1U}, {87.0, 2U}, {89.9, 2U}, {90.0, 3U}, {92.0, 3U}, {92.1, 4U}})
    EXPECT_EQ(band_of(table, value), band) << value;
}

TEST(StateSchoolLadder, BreaksOfAnHour) {
  const BandTable& table = heat_table("united-states-school");
  const auto hour = [&](std::size_t band) { return breaks_in(*table.bands[band].usual.breaks, Seconds(3600)); };
  EXPECT_EQ(hour(0), (BreaksInSlot{3, Seconds(180)}));
  EXPECT_EQ(hour(1), (BreaksInSlot{3, Seconds(240)}));
  EXPECT_EQ(hour(2), (BreaksInSlot{4, Seconds(240)}));
  EXPECT_EQ(hour(3).count * hour(3).each.count, 20 * 60);
}

TEST(StateSchoolLadder, HoursAtMost) {
  const BandTable& table = heat_table("united-states-school");
  EXPECT_EQ(table.bands[2].usual.most_time, Seconds(7200));
  EXPECT_EQ(table.bands[3].usual.most_time, Seconds(3600));
  EXPECT_EQ(table.bands[3].usual.effort, Effort::kEasy);
  EXPECT_TRUE(table.bands[4].usual.no_session);
}

// In Celsius as the sheet has them.
TEST(StateSchoolLadder, InCelsius) {
  for (const auto& [fahrenheit, celsius] :
       {std::pair{82.0, 27.78}, {86.9, 30.50}, {87.0, 30.56}, {90.0, 32.22}, {92.0, 33.33}})
    EXPECT_NEAR(to_celsius({fahrenheit}).degrees, celsius, 0.005);
}

}  // namespace
}  // namespace lanework::care::environment::test
