// Monasterio, Cumming, Larruskain, et al. 2024, Biol Sport 41(1):235-44: growth of less than 3.5, to 7.2 and more than
// 7.2 cm a year, in 84 academy boys; before 88, to 95 and past 95 % of the adult height.
#include <gtest/gtest.h>

#include "core/care/growth/adult_height.h"
#include "core/care/growth/height_velocity.h"
#include "tests/care/shipped_growth.h"

namespace lanework::care::growth {
namespace {

using test::shipped_table;

TEST(Monasterio2024, ClassesOfTwoChanges) {
  EXPECT_NEAR(cm_a_year(2.1, 104), 7.38, 0.01);
  EXPECT_EQ(class_of(shipped_table(), cm_a_year(2.1, 104)), VelocityClass::kFast);
  EXPECT_NEAR(cm_a_year(1.2, 90), 4.87, 0.01);
  EXPECT_EQ(class_of(shipped_table(), cm_a_year(1.2, 90)), VelocityClass::kModerate);
}

TEST(Monasterio2024, CutsAsPrinted) {
  EXPECT_EQ(class_of(shipped_table(), 3.49), VelocityClass::kSlow);
  EXPECT_EQ(class_of(shipped_table(), 3.5), VelocityClass::kModerate);
  EXPECT_EQ(class_of(shipped_table(), 7.2), VelocityClass::kModerate);
  EXPECT_EQ(class_of(shipped_table(), 7.21), VelocityClass::kFast);
}

TEST(Monasterio2024, BandsAsPrinted) {
  const HeightBands& bands = shipped_table().bands[1];
  EXPECT_EQ(band_of(bands, 87.9), "before the spurt");
  EXPECT_EQ(band_of(bands, 88), "around the spurt");
  EXPECT_EQ(band_of(bands, 95), "after the spurt");
}

}  // namespace
}  // namespace lanework::care::growth
