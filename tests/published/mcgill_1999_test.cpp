// McGill, Childs, Liebenson 1999, doi 10.1016/S0003-9993(99)90087-4, young adults: the side bridge is 65 % (men) and 39
// % (women) of the back's time, as means of each person's own share. The seconds are from memory, so that they are
// marked.
#include <gtest/gtest.h>

#include "tests/care/shipped_screens.h"

namespace lanework::care::screens {
namespace {

TEST(McGill1999, TheSecondsFromMemoryAreMarkedAndOfAdults) {
  const Norm& norm = test::test_named("side-bridge-hold").norms.at(0);
  EXPECT_TRUE(norm.unverified);
  EXPECT_NE(norm.of.find("adults"), std::string::npos);
  EXPECT_NEAR(94.0 / 146.0, 0.65, 0.01);  // agrees with the printed share, and no share is made of them here
}

}  // namespace
}  // namespace lanework::care::screens
