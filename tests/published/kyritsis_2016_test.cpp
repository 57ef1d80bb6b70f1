// Limb symmetry as Kyritsis, Bahr, Landreau, Miladi, Witvrouw 2016 (doi 10.1136/bjsports-2015-095908) have it among
// their marks, each hop above 90 % of the other side. Of uninjured athletes 24 % met all such marks: Markstrom, Naili,
// Hager 2022, doi 10.1177/19417381221097949.
#include <gtest/gtest.h>

#include "core/care/screens/screen_measures.h"
#include "tests/care/shipped_screens.h"

namespace lanework::care::screens {
namespace {

TEST(Kyritsis2016, SymmetryOfDistanceAndOfTime) {
  EXPECT_NEAR(limb_symmetry_percent(118, 130, Wanted::kMore), 90.77, 0.01);
  EXPECT_NEAR(limb_symmetry_percent(2.31, 2.10, Wanted::kLess), 90.91, 0.01);
}

TEST(Kyritsis2016, NinetyIsAPrompt) {
  EXPECT_EQ(test::shipped_tests().symmetry_prompt_percent, 90);
  EXPECT_NE(test::shipped_tests().symmetry_caution.find("24 in 100"), std::string::npos);
}

}  // namespace
}  // namespace lanework::care::screens
