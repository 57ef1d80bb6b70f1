#include "core/care/growth/read_measurements.h"

#include <gtest/gtest.h>

#include "core/care/growth/read_growth_people.h"
#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using care::test::comma_sheet;
using care::test::lines_of;
using test::day;
using test::shipped_table;

const Date kToday = day("2026-11-26");
const char* const kPeople =
    "player,born,sex,mother_cm,father_cm,consent,assent,withdrawn\n"
    "Q01,2013-11-26,girl,165,180,2026-01-09,2026-01-10,\n"
    "Q02,2013-05-01,boy,,,2026-01-09,,\n"
    "Q03,2013-05-01,,,,2026-01-09,2026-01-10,2026-10-01\n";

std::vector<GrowthPerson> people_of(const std::string& text = kPeople) {
  return read_growth_people(comma_sheet(text, "people.csv"), shipped_table(), {}, kToday).value();
}

Result<MeasuredPeople> read(const std::string& rows) {
  return read_measurements(comma_sheet("player,date,height_cm,sitting_height_cm,mass_kg\n" + rows, "m.csv"),
                           people_of(), shipped_table(), {}, kToday);
}

TEST(GrowthPeople, AreReadWithTheirAgreement) {
  const std::vector<GrowthPerson> people = people_of();
  ASSERT_EQ(people.size(), 3U);
  EXPECT_EQ(people[0].sex, Sex::kGirl);
  EXPECT_EQ(people[0].father_cm, 180);
  EXPECT_EQ(people[0].born, day("2013-11-26"));
  EXPECT_EQ(people[1].agreement.consent, day("2026-01-09"));
  EXPECT_FALSE(people[1].agreement.assent);
  EXPECT_EQ(people[2].agreement.withdrawn, day("2026-10-01"));
}

TEST(GrowthPeople, OfThoseWhoDidNotAgreeNoMeasureIsRead) {
  const auto people = read_growth_people(
      comma_sheet("player,born,sex,mother_cm,father_cm,consent,assent\nQ01,2013-11-26,robot,1.65,9999,2026-01-09,\n"),
      shipped_table(), {}, kToday);
  ASSERT_TRUE(people.ok());
  EXPECT_FALSE(people.value()[0].sex);
  EXPECT_FALSE(people.value()[0].mother_cm);
}

TEST(GrowthPeople, Mistakes) {
  const auto people = read_growth_people(
      comma_sheet(
          "player,born,sex,mother_cm,father_cm,consent,assent\nQ01,2013-11-26,robot,1.65,180,2026-01-09,2026-01-10\n"
          "Q01,2013-02-30,girl,,,2026-01-09,2026-01-10\n",
          "people.csv"),
      shipped_table(), {}, kToday);
  ASSERT_FALSE(people.ok());
  EXPECT_EQ(lines_of(people.faults()),
            "people.csv:2: sex: found 'robot', expected one of boy, girl, m, f, male, female\n"
            "people.csv:2: mother_cm: found '1.65', expected a parent's height from 130 to 225 cm\n"
            "people.csv:3: born: found '2013-02-30', expected a date that exists, such as 2026-11-24\n"
            "people.csv:3: player: found 'Q01', expected each player once\n");
}

TEST(Measurements, InTheOrderOfTheirDays) {
  const auto read_well = read("Q01,2026-11-26,158,81,47\nQ01,2026-08-14,155.9,,\n");
  ASSERT_TRUE(read_well.ok()) << lines_of(read_well.faults());
  const std::vector<BodyMeasurement>& of = read_well.value().of[0];
  ASSERT_EQ(of.size(), 2U);
  EXPECT_EQ(of[0].date, day("2026-08-14"));
  EXPECT_FALSE(of[0].mass_kg);
  EXPECT_EQ(of[1].sitting_height_cm, 81);
  EXPECT_EQ(of[1].line, 2);
}

// Not a value of theirs is looked at: neither shown nor quoted in a fault.
TEST(Measurements, OfThoseWhoDidNotAgreeAreNotRead) {
  const auto found = read("Q02,nonsense,1.58,9,9\nQ03,2026-11-26,1580,,\nQ99,2026-11-26,tall,,\n");
  ASSERT_TRUE(found.ok()) << lines_of(found.faults());
  EXPECT_EQ(found.value().rows_not_read, 3);
  for (const auto& of : found.value().of) EXPECT_TRUE(of.empty());
}

TEST(Measurements, MistakesSayLineAndColumn) {
  const auto found = read(
      "Q01,2026-11-26,1.58,81,47\nQ01,2026-11-27,158,,\nQ01,2026-10-26,158,,103.6\nQ01,2026-10-20,,81,47\n"
      "Q01,2026-10-19,158,0.81,\nQ01,2026-10-18,tall,81,47\nQ01,26/13/2026,158,,\n");
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(
      lines_of(found.faults()),
      "m.csv:2: height_cm: found '1.58', expected a height from 116 to 203 cm at age 13 (this seems to be in metres)\n"
      "m.csv:3: date: found '2026-11-27', expected a day from 2000-01-01 to 2026-11-26\n"
      "m.csv:5: height_cm: found an empty cell, expected a length in cm, such as 158.2\n"
      "m.csv:6: sitting_height_cm: found '0.81', expected a sitting height of 45 to 60 % of the height (this seems "
      "to be in metres)\n"
      "m.csv:7: height_cm: found 'tall', expected a length in cm, such as 158.2\n"
      "m.csv:8: date: found '26/13/2026', expected a date that exists, such as 2026-11-24\n");
}

TEST(Measurements, TwoOfOneDayAndAPlayerWhoShrank) {
  const auto found = read("Q01,2026-11-26,156,,\nQ01,2026-08-14,158,,\nQ01,2026-08-14,158.1,,\n");
  ASSERT_FALSE(found.ok());
  EXPECT_EQ(
      lines_of(found.faults()),
      "m.csv:2: height_cm: found '156', expected at most 1 cm less than in line 4 (nobody shrinks by more than the "
      "tape's error: one of the two is wrong)\n"
      "m.csv:4: date: found '2026-08-14', expected one row a player and day; line 3 is of the same day (where two "
      "or three were taken, write their mean once)\n");
}

}  // namespace
}  // namespace lanework::care::growth
