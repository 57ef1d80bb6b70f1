#include "core/club/age_band.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework::club::test {
namespace {

TEST(AgeBand, IsReadAsSquadsAreNamed) {
  EXPECT_EQ(band_in("U13"), 13);
  EXPECT_EQ(band_in("u9-siskins"), 9);
  EXPECT_EQ(band_in("Under-13 Kestrels"), 13);
  EXPECT_EQ(band_in("under 13"), 13);
  EXPECT_EQ(band_in("Girls U-14"), 14);
  EXPECT_EQ(band_in("Haus 12"), std::nullopt);
  EXPECT_EQ(band_in("Menu13"), std::nullopt);
  EXPECT_EQ(band_in("U"), std::nullopt);
  EXPECT_EQ(band_in("U2013"), std::nullopt);
  EXPECT_EQ(band_in(""), std::nullopt);
}

TEST(AgeBand, OnlyTheBandIsExchanged) {
  EXPECT_EQ(with_band("Under-9 Siskins 2", 10), "Under-10 Siskins 2");
  EXPECT_EQ(with_band("U14 Girls", 15), "U15 Girls");
  EXPECT_EQ(with_band("Hawks", 15), "Hawks");
}

TEST(AgeBand, WhatIsWrittenIsRead) {
  EXPECT_TRUE(rc::check([] {
    const int band = *rc::gen::inRange(1, 100);
    RC_ASSERT(band_in(with_band(*rc::gen::element<std::string>("U1", "Under-77 X", "the u 5 girls"), band)) == band);
  }));
}

}  // namespace
}  // namespace lanework::club::test
