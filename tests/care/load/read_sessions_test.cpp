#include "core/care/load/read_sessions.h"

#include <gtest/gtest.h>

#include "tests/care/comma_sheet.h"

namespace lanework::care::load {
namespace {

using care::test::comma_sheet;
using care::test::day;
using care::test::lines_of;

Result<Sessions> read(const std::string& rows) {
  return read_sessions(comma_sheet("player,date,minutes,effort,entered_by,session,age\n" + rows, "load.csv"), {},
                       day("2026-11-26"));
}

TEST(LoadSessions, OfPlayersAndTheLead) {
  const auto found =
      read("Q02,2026-11-24,75,6,lead,,13\nQ01,2026-11-25,90,7.5,Player,,\nQ01,2026-11-24,60,4,player,,\n");
  ASSERT_TRUE(found.ok()) << lines_of(found.faults());
  ASSERT_EQ(found.value().sessions.size(), 3U);
  EXPECT_EQ(found.value().sessions[0].player, "Q01");
  EXPECT_EQ(found.value().sessions[0].date, day("2026-11-24"));
  EXPECT_EQ(found.value().sessions[1].effort, 7.5);
  EXPECT_EQ(found.value().sessions[2].age, 13);
  EXPECT_TRUE(found.value().kept_out.empty());
}

// A coach's guess never feeds it; nor does a row of nobody. Their numbers are not even read.
TEST(LoadSessions, ACoachsGuessIsKeptOutAndTold) {
  const auto found = read(
      "Q01,2026-11-24,75,6,coach,,\nQ01,2026-11-24,60,4,player,,\nQ02,2026-11-24,many,hard,,,\nQ03,2026-11-24,60,4,a "
      "parent,,\n");
  ASSERT_TRUE(found.ok()) << lines_of(found.faults());
  ASSERT_EQ(found.value().sessions.size(), 1U);
  EXPECT_EQ(found.value().sessions[0].line, 3);
  ASSERT_EQ(found.value().kept_out.size(), 3U);
  EXPECT_EQ(found.value().kept_out[0].line, 2);
  EXPECT_EQ(found.value().kept_out[0].entered_by, "coach");
  EXPECT_EQ(found.value().kept_out[1].entered_by, "");
  EXPECT_EQ(found.value().kept_out[2].entered_by, "a parent");
}

TEST(LoadSessions, TwoOfOneDayNeedAWordEach) {
  const auto twice = read("Q01,2026-11-24,75,6,player,,\nQ01,2026-11-24,60,4,lead,,\n");
  ASSERT_FALSE(twice.ok());
  EXPECT_EQ(
      lines_of(twice.faults()),
      "load.csv:3: date: found '2026-11-24', expected each session once; line 2 is of the same player and day (two "
      "sessions of one day need a word each in the column 'session')\n");
  EXPECT_TRUE(read("Q01,2026-11-24,75,6,player,morning,\nQ01,2026-11-24,60,4,lead,evening,\n").ok());
}

TEST(LoadSessions, Mistakes) {
  const auto found = read(
      "Q01,2026-11-24,75,11,player,,\nQ01,2026-11-23,0,5,player,,\nQ01,2026-11-22,75.5,5,player,,\n,2026-11-21,75,5,"
      "lead,,\n"
      "Q01,2026-11-27,75,5,lead,,\nQ01,2026-11-20,75,,lead,,\nQ01,2026-11-19,75,-1,lead,,old\n");
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(lines_of(found.faults()),
            "load.csv:2: effort: found '11', expected the effort of the whole session, from 0 (rest) to 10 (as hard as "
            "can be)\n"
            "load.csv:3: minutes: found '0', expected whole minutes of one session, from 1 to 600\n"
            "load.csv:4: minutes: found '75.5', expected whole minutes of one session, from 1 to 600\n"
            "load.csv:5: player: found an empty cell, expected the id of a player\n"
            "load.csv:6: date: found '2026-11-27', expected a day from 2000-01-01 to 2026-11-26\n"
            "load.csv:7: effort: found an empty cell, expected the effort of the whole session, from 0 (rest) to 10 "
            "(as hard as "
            "can be)\n"
            "load.csv:8: effort: found '-1', expected the effort of the whole session, from 0 (rest) to 10 (as hard as "
            "can be)\n"
            "load.csv:8: age: found 'old', expected an age in whole years, from 5 to 25\n");
}

}  // namespace
}  // namespace lanework::care::load
