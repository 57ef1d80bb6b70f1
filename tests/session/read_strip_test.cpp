// Strips: what stands in the file is what comes out, and every mistake is one line at its place.
#include <gtest/gtest.h>

#include "core/session/strip.h"
#include "tests/catalogue/shipped.h"
#include "tests/session/sample_squad.h"

namespace lanework::session::test {
namespace {

const std::string kStrip =
    "name = \"North end\"\n"
    "lane_length_metres = 15\n"
    "cone_spacing_metres = 5\n"
    "lanes = 2\n"
    "area_metres = { width = 20, length = 12.5 }\n";

Result<Strip> strip_of(const std::string& toml) { return read_strip(parse_toml("strip.toml", toml).value()); }

std::string strip_faults(const std::string& toml) {
  const auto strip = strip_of(toml);
  return strip ? "" : catalogue::test::all_lines(strip.faults());
}

TEST(Strip, WhatIsNotStatedIsPlain) {
  const auto strip = strip_of(exchanged(kStrip, "name = \"North end\"\n", ""));
  ASSERT_TRUE(strip);
  EXPECT_EQ(strip.value().name, "the strip");
  EXPECT_EQ(strip.value().lane_length.count, 15000);
  EXPECT_EQ(strip.value().lane_gap.count, 3000);
  EXPECT_EQ(strip.value().area_length.count, 12500);
  EXPECT_TRUE(strip.value().surface.empty());
  EXPECT_FALSE(strip.value().wall || strip.value().soft_ground || strip.value().line);
}

TEST(Strip, EverythingStatedIsRead) {
  const auto strip = strip_of(kStrip +
                              "lane_gap_metres = 2.5\nsurface = [\"wet\", \"dark\"]\n"
                              "wall = true\nsoft_ground = true\nline = true\n");
  ASSERT_TRUE(strip);
  EXPECT_EQ(strip.value().name, "North end");
  EXPECT_EQ(strip.value().lane_gap.count, 2500);
  EXPECT_EQ(strip.value().surface,
            (std::vector<catalogue::Surface>{catalogue::Surface::kWet, catalogue::Surface::kDark}));
  EXPECT_TRUE(strip.value().wall && strip.value().soft_ground && strip.value().line);
}

// Four cones a line on 15 m at 5 m is the trade's smallest set-up: common practice, no source.
TEST(Strip, ConesALineCountBothEnds) {
  EXPECT_EQ(cones_a_line(strip_of(kStrip).value()), 4);
  EXPECT_EQ(cones_a_line(strip_of(exchanged(kStrip, "cone_spacing_metres = 5", "cone_spacing_metres = 4")).value()), 4);
  EXPECT_EQ(cones_a_line(strip_of(exchanged(kStrip, "cone_spacing_metres = 5", "cone_spacing_metres = 15")).value()),
            2);
}

struct Mistake {
  std::string piece;
  std::string with;
  std::string line;
};

class StripMistake : public testing::TestWithParam<Mistake> {};

TEST_P(StripMistake, IsOneLineAtItsPlace) {
  EXPECT_EQ(strip_faults(exchanged(kStrip, GetParam().piece, GetParam().with)), GetParam().line + "\n");
}

INSTANTIATE_TEST_SUITE_P(
    Every, StripMistake,
    testing::Values(
        Mistake{"metres = 15", "metres = 0",
                "strip.toml:2:1: lane_length_metres: found 0, expected a number from 5 to 60"},
        Mistake{"metres = 15", "metres = -15",
                "strip.toml:2:1: lane_length_metres: found -15, expected a number from 5 to 60"},
        Mistake{"metres = 15", "metres = 60.5",
                "strip.toml:2:1: lane_length_metres: found 60.5, expected a number from 5 to 60"},
        Mistake{"metres = 15", "metres = \"15 m\"",
                "strip.toml:2:1: lane_length_metres: found '15 m', expected a number from 5 to 60"},
        Mistake{"metres = 15", "metres = nan",
                "strip.toml:2:1: lane_length_metres: found null, expected a number from 5 to 60"},
        Mistake{"lane_length_metres = 15\n", "",
                "strip.toml:1:1: lane_length_metres: found nothing, expected a number from 5 to 60"},
        Mistake{"spacing_metres = 5", "spacing_metres = 16",
                "strip.toml:3:1: cone_spacing_metres: found a spacing longer than the lane, expected at most "
                "lane_length_metres"},
        Mistake{"lanes = 2", "lanes = 0", "strip.toml:4:1: lanes: found 0, expected a whole number from 1 to 12"},
        Mistake{"lanes = 2", "lanes = 1.5", "strip.toml:4:1: lanes: found 1.5, expected a whole number from 1 to 12"},
        Mistake{"area_metres = { width = 20, length = 12.5 }\n", "",
                "strip.toml:1:1: area_metres: found nothing, expected a table with width and length in metres"},
        Mistake{"width = 20, ", "",
                "strip.toml:5:1: area_metres.width: found nothing, expected a number from 2 to 120"},
        Mistake{"area_metres = { width = 20, length = 12.5 }", "area_metres = 20",
                "strip.toml:5:1: area_metres: found 20, expected a table"},
        Mistake{"lanes = 2", "lanes = 2\nsurface = [\"icy\"]",
                "strip.toml:5:1: surface: found 'icy', expected wet, hard, uneven or dark"},
        Mistake{"lanes = 2", "lanes = 2\nsurface = \"wet\"", "strip.toml:5:1: surface: found 'wet', expected a list"},
        Mistake{"lanes = 2", "lanes = 2\nwall = \"yes\"",
                "strip.toml:5:1: wall: found 'yes', expected true or false"}));

TEST(Strip, AnUnknownKeyNamesTheKnownOnes) {
  const std::string line = strip_faults(kStrip + "walls = true\n");
  EXPECT_EQ(line.find("strip.toml:6:1: walls: found 'walls', expected one of name, lane_length_metres"), 0U) << line;
}

TEST(Strip, EveryMistakeIsTold) {
  const auto strip = strip_of("lane_length_metres = 0\nlanes = 0\nwall = 1\n");
  ASSERT_FALSE(strip);
  EXPECT_EQ(strip.faults().size(), 5U) << catalogue::test::all_lines(strip.faults());
}

}  // namespace
}  // namespace lanework::session::test
