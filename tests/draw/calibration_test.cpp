// Places on the page against values worked out by hand from the numbers in each test.
#include <gtest/gtest.h>

#include "app/draw/ribbon.h"
#include "app/draw/strip_plan.h"
#include "tests/draw/fixed_measure.h"

namespace lanework::draw {
namespace {

CardMatter one_drill() {
  CardMatter card;
  card.gathering_seconds = 20;
  card.slot_seconds = 1200;
  card.planned_seconds = 1000;
  card.nine_in_ten_seconds = 1100;
  DrillMatter drill;
  drill.change_seconds = 10;
  drill.starts_second = 30;
  drill.telling_seconds = 20;
  drill.takes_seconds = 90;
  card.drills = {drill};
  return card;
}

// 600 points for 1200 seconds: half a point a second, from x = 100.
TEST(Ribbon, IsDrawnToTime) {
  const RibbonGeometry ribbon = ribbon_geometry(one_drill(), {100, 50, 600, 24});
  EXPECT_DOUBLE_EQ(ribbon.points_a_second, 0.5);
  EXPECT_DOUBLE_EQ(ribbon.gathered, 110);
  ASSERT_EQ(ribbon.parts.size(), 1u);
  EXPECT_DOUBLE_EQ(ribbon.parts[0].change_from, 110);
  EXPECT_DOUBLE_EQ(ribbon.parts[0].telling_from, 115);
  EXPECT_DOUBLE_EQ(ribbon.parts[0].doing_from, 125);
  EXPECT_DOUBLE_EQ(ribbon.parts[0].until, 160);
  EXPECT_DOUBLE_EQ(ribbon.finish, 600);
  EXPECT_DOUBLE_EQ(ribbon.nine_in_ten, 650);
  EXPECT_DOUBLE_EQ(ribbon.slot_end, 700);
}

// Nine nights in ten end at 1500 s, after the slot: 600 points for 1500 seconds are 0.4 a second.
TEST(Ribbon, ShowsAFinishAfterTheSlot) {
  CardMatter card = one_drill();
  card.nine_in_ten_seconds = 1500;
  const RibbonGeometry ribbon = ribbon_geometry(card, {100, 50, 600, 24});
  EXPECT_DOUBLE_EQ(ribbon.slot_end, 580);
  EXPECT_DOUBLE_EQ(ribbon.nine_in_ten, 700);
}

StripMatter two_lanes() {
  StripMatter strip;
  strip.lane_length_mm = 15000;
  strip.cone_spacing_mm = 5000;
  strip.lanes = 2;
  strip.lane_gap_mm = 3000;
  return strip;
}

// 3 m to wait + 15 m of lane in 180 points: 10 points a metre; lanes 30 points apart about y = 61.
TEST(Strip, IsDrawnToScale) {
  const StripGeometry plan = strip_geometry(two_lanes(), {10, 20, 182, 82});
  EXPECT_DOUBLE_EQ(plan.points_a_metre, 10);
  ASSERT_EQ(plan.cones.size(), 2u);
  ASSERT_EQ(plan.cones[0].size(), 4u);
  const double across[] = {41, 91, 141, 191};
  for (std::size_t cone = 0; cone < 4; ++cone) {
    EXPECT_DOUBLE_EQ(plan.cones[0][cone].x, across[cone]);
    EXPECT_DOUBLE_EQ(plan.cones[0][cone].y, 46);
    EXPECT_DOUBLE_EQ(plan.cones[1][cone].x, across[cone]);
    EXPECT_DOUBLE_EQ(plan.cones[1][cone].y, 76);
  }
  EXPECT_DOUBLE_EQ(plan.waiting[0][0].x, 32);  // 0.8 m and the cone's point behind the first cone
  EXPECT_DOUBLE_EQ(plan.waiting[0][1].x, 24);
  EXPECT_EQ(plan.area.width, 0);
}

// An area of 15 m x 20 m holds the lanes; 200 points do not fit in 82, so it is cut at the box.
TEST(Strip, ShowsTheAreaAroundLanesThatFitIntoIt) {
  StripMatter strip = two_lanes();
  strip.area_length_mm = 15000;
  strip.area_width_mm = 20000;
  const StripGeometry plan = strip_geometry(strip, {10, 20, 182, 82});
  EXPECT_TRUE(plan.area_around_lanes);
  EXPECT_TRUE(plan.area_cut);
  EXPECT_DOUBLE_EQ(plan.area.x, 41);
  EXPECT_DOUBLE_EQ(plan.area.width, 150);
  EXPECT_DOUBLE_EQ(plan.area.y, 20);
  EXPECT_DOUBLE_EQ(plan.area.height, 82);
}

// 3 + 15 + 2 + 10 m in 300 points: the area of 10 m x 5 m stands 2 m beyond the lanes' end at 1 + 180.
TEST(Strip, ShowsASmallAreaBesideTheLanes) {
  StripMatter strip = two_lanes();
  strip.area_length_mm = 10000;
  strip.area_width_mm = 5000;
  const StripGeometry plan = strip_geometry(strip, {0, 0, 302, 82});
  EXPECT_FALSE(plan.area_around_lanes);
  EXPECT_FALSE(plan.area_cut);
  EXPECT_DOUBLE_EQ(plan.points_a_metre, 10);
  EXPECT_DOUBLE_EQ(plan.area.x, 201);
  EXPECT_DOUBLE_EQ(plan.area.y, 16);
  EXPECT_DOUBLE_EQ(plan.area.width, 100);
  EXPECT_DOUBLE_EQ(plan.area.height, 50);
}

TEST(Strip, CountsConesAndPaces) {
  const std::vector<StripLine> lines = strip_lines(two_lanes());
  ASSERT_GE(lines.size(), 3u);
  EXPECT_EQ(lines[0].lead + ": " + lines[0].text, "2 lanes: 15 m, 20 paces");            // 15 / 0.75
  EXPECT_EQ(lines[1].lead + ": " + lines[1].text, "8 cones: every 5 m, 6\u00BD paces");  // 5 / 0.75 = 6.67
  EXPECT_EQ(lines[2].text, "3 m, 4 paces");
}

}  // namespace
}  // namespace lanework::draw
