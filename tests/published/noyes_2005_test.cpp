// Noyes, Barber-Westin, Fleckenstein, Walsh, West 2005, doi 10.1177/0363546504266484: gap between the knees over the
// gap between the hips at the deepest point of a landing, in 325 girls and 130 boys of 11 to 19.
#include <gtest/gtest.h>

#include "core/care/screens/screen_measures.h"
#include "tests/care/shipped_screens.h"

namespace lanework::care::screens {
namespace {

TEST(Noyes2005, KneeSeparation) {
  EXPECT_NEAR(knee_separation_percent(17, 33), 51.52, 0.05);
  EXPECT_NEAR(knee_separation_percent(23, 40), 57.50, 0.05);
}

TEST(Noyes2005, TheNormSaysWhomItIsOf) {
  const ScreenTest& test = test::test_named("knee-separation");
  ASSERT_EQ(test.norms.size(), 1U);
  EXPECT_EQ(test.norms[0].of, "325 girls and 130 boys of 11 to 19");
  EXPECT_FALSE(test.change);  // none was published: a change is not judged
}

}  // namespace
}  // namespace lanework::care::screens
