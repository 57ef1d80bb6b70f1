// Moore, McKay, Macdonald, et al. 2015, doi 10.1249/MSS.0000000000000588. The coefficients were read in a later paper's
// table (doi 10.1016/j.jshs.2020.09.003); the values are worked from them by hand.
#include <gtest/gtest.h>

#include "core/care/growth/maturity.h"

namespace lanework::care::growth {
namespace {

TEST(Moore2015, WorkedExamples) {
  EXPECT_NEAR(moore_2015_boys_sitting_offset(13.0, 81), -0.721, 0.002);
  EXPECT_NEAR(moore_2015_stature_offset(Sex::kBoy, 13.0, 158), -0.580, 0.002);
  EXPECT_NEAR(moore_2015_boys_sitting_offset(14.5, 89), 0.949, 0.002);
  EXPECT_NEAR(moore_2015_stature_offset(Sex::kBoy, 14.5, 172), 1.009, 0.002);
  EXPECT_NEAR(moore_2015_stature_offset(Sex::kGirl, 12.0, 152), -0.006, 0.002);
  EXPECT_NEAR(moore_2015_stature_offset(Sex::kGirl, 13.0, 160), 1.075, 0.002);
}

// Two misprints circulate: -8.125741, and -7.999994 without its decimal point.
TEST(Moore2015, TheConstantsAreThoseOfThePaper) {
  EXPECT_DOUBLE_EQ(moore_2015_boys_sitting_offset(0, 0), -8.128741);
  EXPECT_NE(moore_2015_boys_sitting_offset(0, 0), -8.125741);
  EXPECT_DOUBLE_EQ(moore_2015_stature_offset(Sex::kBoy, 0, 0), -7.999994);
  EXPECT_DOUBLE_EQ(moore_2015_stature_offset(Sex::kGirl, 0, 0), -7.709133);
}

}  // namespace
}  // namespace lanework::care::growth
