#include <gtest/gtest.h>

#include "app/draw/card_words.h"
#include "app/draw/foreign_text.h"

namespace lanework::draw {
namespace {

TEST(Words, SayTimes) {
  EXPECT_EQ(words::clock_time(18 * 60 + 4, 59), "18:04");
  EXPECT_EQ(words::clock_time(18 * 60 + 4, 60), "18:05");
  EXPECT_EQ(words::clock_time(23 * 60 + 59, 120), "00:01");
  EXPECT_EQ(words::duration(50), "50 s");
  EXPECT_EQ(words::duration(120), "2 min");
  EXPECT_EQ(words::duration(70), "1 min 10 s");
  EXPECT_EQ(words::short_duration(119), "119 s");
  EXPECT_EQ(words::short_duration(120), "2 min");
  EXPECT_EQ(words::short_duration(140), "2\u00BD min");
}

TEST(Words, KeepDurationsTogether) {
  EXPECT_EQ(words::durations_unbroken("a third lane saves 1 min 32 s"), "a third lane saves 1\u00A0min\u00A032\u00A0s");
  EXPECT_EQ(words::durations_unbroken("3 stops, 45 s"), "3 stops, 45\u00A0s");
}

TEST(Words, SayDistances) {
  EXPECT_EQ(words::metres(15000), "15 m");
  EXPECT_EQ(words::metres(2540), "2.5 m");
  EXPECT_EQ(words::paces(15000, 750), "20 paces");
  EXPECT_EQ(words::paces(5000, 750), "6\u00BD paces");
  EXPECT_EQ(words::paces(750, 750), "1 pace");
  EXPECT_EQ(words::paces(375, 750), "\u00BD pace");
}

TEST(ForeignText, KeepsEveryScript) {
  for (const char* text : {"\u0646\u0648\u0631", "\u05E0\u05D5\u05E2\u05D4", "\u041E\u043A\u0441\u0430\u043D\u0430",
                           "\u4F50\u85E4", "\u0905\u0928\u0928\u094D\u092F\u093E", "\U0001F600", "<b>&amp;"}) {
    EXPECT_EQ(clean_text(text), text);
  }
}

TEST(ForeignText, IsOneLine) { EXPECT_EQ(clean_text("  a\r\n\tb\u2028c \x01 d "), "a b c d"); }

// Unicode Standard Annex 9 lists the explicit direction characters.
TEST(ForeignText, CannotTurnTheReadingDirection) {
  EXPECT_EQ(clean_text("a\u202Eb\u202Cc\u2066d\u2069e\u200Ff\u061Cg"), "abcdefg");
}

TEST(ForeignText, MendsBrokenBytesAndBoundsLength) {
  EXPECT_EQ(clean_text("a\xFF"
                       "b"),
            "a\uFFFD"
            "b");
  EXPECT_EQ(clean_text(std::string("a\0b", 3)),
            "a\uFFFD"
            "b");
  EXPECT_EQ(clean_text(std::string(5000, 'x')).size(), 600u);
  std::string stacked = "e";
  for (int mark = 0; mark < 50; ++mark) stacked += "\u0301";
  EXPECT_EQ(clean_text(stacked), "e\u0301\u0301\u0301\u0301");
}

}  // namespace
}  // namespace lanework::draw
