// The break-point angle of the kneeling lower is written in two ways: as knee flexion, 57.8 degrees in 15 men (J Sports
// Sci Med 2021;20:216-21), and as the included angle, 126.0 degrees (doi 10.3389/fspor.2021.629606).
#include <gtest/gtest.h>

#include "core/care/screens/screen_measures.h"
#include "tests/care/shipped_screens.h"

namespace lanework::care::screens {
namespace {

TEST(BreakPoint2021, IncludedAngleToFlexion) {
  EXPECT_DOUBLE_EQ(flexion_from_included(126.0), 54.0);
  EXPECT_DOUBLE_EQ(included_from_flexion(54.0), 126.0);
}

TEST(BreakPoint2021, TheNormIsOfAdults) {
  const ScreenTest& test = test::test_named("kneeling-lower-break-point");
  EXPECT_TRUE(test.knee_angle);
  ASSERT_EQ(test.norms.size(), 2U);
  EXPECT_EQ(test.norms[0].words, "57.8 degrees (deviation 13.3)");
  EXPECT_EQ(test.norms[0].of, "15 men");
}

}  // namespace
}  // namespace lanework::care::screens
