#include "core/care/screens/read_screen_rows.h"

#include <gtest/gtest.h>

#include "tests/care/comma_sheet.h"
#include "tests/care/shipped_screens.h"

namespace lanework::care::screens {
namespace {

using care::test::comma_sheet;
using care::test::day;
using care::test::lines_of;
using test::shipped_tests;

Result<std::vector<ScreenValue>> read(const std::string& rows) {
  return read_screen_rows(comma_sheet("player,date,test,side,value,angle_as\n" + rows, "screens.csv"), shipped_tests(),
                          {}, day("2026-11-26"));
}

TEST(ScreenRows, TriesOfADayAreOneValue) {
  const auto found = read(
      "Q01,2026-11-24,hop-for-distance,left,118,\nQ01,2026-11-24,Hop for distance,left,122,\n"
      "Q01,2026-11-24,timed-hop,right,2.31,\nQ01,2026-11-24,timed-hop,right,2.11,\nQ01,2026-11-24,plank-hold,,60,\n");
  ASSERT_TRUE(found.ok()) << lines_of(found.faults());
  ASSERT_EQ(found.value().size(), 3U);
  EXPECT_EQ(found.value()[0].mean, 120);
  EXPECT_EQ(found.value()[0].best, 122);
  EXPECT_EQ(found.value()[0].trials, 2);
  EXPECT_NEAR(found.value()[1].best, 2.11, 1e-9);  // less is the better
  EXPECT_EQ(found.value()[2].side, Side::kBoth);
}

TEST(ScreenRows, AnIncludedAngleIsTurnedIntoFlexion) {
  const auto found = read(
      "Q01,2026-11-24,kneeling-lower-break-point,,126,included\nQ02,2026-11-24,kneeling-lower-break-point,,54,\n"
      "Q03,2026-11-24,kneeling-lower-break-point,,54,flexion\n");
  ASSERT_TRUE(found.ok()) << lines_of(found.faults());
  for (const ScreenValue& value : found.value()) EXPECT_EQ(value.mean, 54) << value.player;
}

TEST(ScreenRows, Mistakes) {
  const auto found = read(
      "Q01,2026-11-24,hop-for-distance,,118,\nQ01,2026-11-24,plank-hold,left,60,\nQ01,2026-11-24,flying,left,60,\n"
      "Q01,2026-11-24,single-leg-stance,left,46,\nQ01,2026-11-24,plank-hold,,60,included\n"
      "Q01,2026-11-24,kneeling-lower-break-point,,54,included\nQ01,2026-11-24,plank-hold,,,\n");
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(lines_of(found.faults()),
            "screens.csv:2: side: found an empty cell, expected left or right: this test has sides\n"
            "screens.csv:3: side: found 'left', expected nothing: this test has no sides\n"
            "screens.csv:4: test: found 'flying', expected one of single-leg-stance, single-leg-stance-eyes-closed, "
            "hop-for-distance, timed-hop, plank-hold, side-bridge-hold, frontal-plane-angle, knee-separation, "
            "kneeling-lower-break-point\n"
            "screens.csv:5: value: found '46', expected a value from 0 to 45 s\n"
            "screens.csv:6: angle_as: found 'included', expected nothing: this test is no angle of the knee\n"
            "screens.csv:7: value: found '54', expected an included angle from 90 to 180 degrees\n"
            "screens.csv:8: value: found an empty cell, expected a value from 0 to 600 s\n");
}

}  // namespace
}  // namespace lanework::care::screens
