// Grundstein A et al. 2015, doi 10.1016/j.apgeog.2014.10.014: regional cut-offs of the contiguous United States, from
// memory; category 2's lower steps as a district's policy has them (read at second hand).
#include <gtest/gtest.h>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(Grundstein2015, CutOffs) {
  for (const auto& [category, cut_off] : {std::pair{"1", 86.2}, {"2", 89.9}, {"3", 92.1}}) {
    const BandTable& table = heat_table(std::string("united-states-category-") + category);
    EXPECT_EQ(table.standing, Standing::kUnverified);
    EXPECT_TRUE(table.bands[band_of(table, cut_off)].usual.no_session);
    EXPECT_FALSE(table.bands[band_of(table, cut_off - 0.1)].usual.no_session);
  }
}

TEST(Grundstein2015, LowerStepsOfCategory2) {
  const BandTable& table = heat_table("united-states-category-2");
  for (const auto& [value, band] : {std::pair{79.8, 0U}, {79.9, 1U}, {84.6, 2U}, {87.7, 3U}})
    EXPECT_EQ(band_of(table, value), band) << value;
}

}  // namespace
}  // namespace lanework::care::environment::test
