// Air quality for under-18s by a state's guide: called off from an index of 151, stricter than the guide for schools,
// which calls off from 201. The stricter is the default.
#include <gtest/gtest.h>

#include "tests/care/environment/shipped_tables.h"

namespace lanework::care::environment::test {
namespace {

TEST(StateUnder18Air, CalledOffFrom151) {
  const BandTable& under_18 = shipped_tables().air.of_default_region();
  const BandTable& schools = *shipped_tables().air.find("schools");
  EXPECT_EQ(under_18.source, "state-under-18-air-2020");
  EXPECT_FALSE(under_18.bands[band_of(under_18, 150)].usual.no_session);
  EXPECT_TRUE(under_18.bands[band_of(under_18, 151)].usual.no_session);
  EXPECT_FALSE(schools.bands[band_of(schools, 200)].usual.no_session);
  EXPECT_TRUE(schools.bands[band_of(schools, 201)].usual.no_session);
}

TEST(StateUnder18Air, BandsOfTheIndex) {
  const BandTable& schools = *shipped_tables().air.find("schools");
  for (const auto& [value, band] :
       {std::pair{50.0, 0U}, {51.0, 1U}, {100.0, 1U}, {101.0, 2U}, {150.0, 2U}, {151.0, 3U}, {500.0, 4U}})
    EXPECT_EQ(band_of(schools, value), band) << value;
}

}  // namespace
}  // namespace lanework::care::environment::test
