#include "core/care/sheet/care_sheet.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/care/comma_sheet.h"

namespace lanework::care {
namespace {

TEST(DecimalNumber, PointOrComma) {
  EXPECT_EQ(decimal_number("158.2"), 158.2);
  EXPECT_EQ(decimal_number("158,2"), 158.2);
  EXPECT_EQ(decimal_number("-0.5"), -0.5);
  EXPECT_EQ(decimal_number("+7"), 7.0);
  for (const char* bad : {"", "-", "1.", ".5", "1.2.3", "1e3", "158 cm", "nan", "inf", "1234567890123456"})
    EXPECT_FALSE(decimal_number(bad)) << bad;
}

TEST(DecimalNumber, WhatIsWrittenIsReadBack) {
  EXPECT_TRUE(rc::check([] {
    const double value = *rc::gen::inRange(-99'999, 99'999) / 100.0;
    RC_ASSERT(decimal_number(short_decimal(value, 2)) == value);
  }));
}

TEST(ShortDecimal, NoMoreThanNeeded) {
  EXPECT_EQ(short_decimal(158), "158");
  EXPECT_EQ(short_decimal(79.5), "79.5");
  EXPECT_EQ(short_decimal(-0.931, 2), "-0.93");
  EXPECT_EQ(short_decimal(-0.001), "0");
}

const people::KnownColumns kKnown = {
    {{"player", "player", true}, {"date", "date", true}, {"value", "value"}}, "page.md", {}};

TEST(CareSheet, EveryFaultHasItsLineAndHeading) {
  const people::TextForms forms;
  const people::Sheet sheet = test::comma_sheet("Player,Date,Value\nQ01,2026-11-24,12\n,2026-13-24,many\nQ03,,99\n");
  Faults faults;
  CareSheet cells(sheet, kKnown, forms, faults);
  ASSERT_EQ(cells.rows().size(), 3U);
  const auto dates = cells.dates(cells.rows(), 1, {test::day("2020-01-01"), test::day("2026-12-31")}, true);
  for (const people::SheetRow* row : cells.rows()) {
    (void)cells.name(*row, 0, "the id of a player");
    (void)cells.number(*row, 2, {0, 20, "a value to 20"});
  }
  EXPECT_EQ(dates[0], test::day("2026-11-24"));
  EXPECT_EQ(test::lines_of(people::faults_by_line(sheet, faults, 20)),
            "sheet.csv:3: Date: found '2026-13-24', expected a date that exists, such as 2026-11-24\n"
            "sheet.csv:3: Player: found an empty cell, expected the id of a player\n"
            "sheet.csv:3: Value: found 'many', expected a value to 20\n"
            "sheet.csv:4: Date: found an empty cell, expected a date such as 2026-11-24\n"
            "sheet.csv:4: Value: found '99', expected a value to 20\n");
}

TEST(CareSheet, WithoutRowsItIsAFault) {
  const people::TextForms forms;
  const people::Sheet sheet = test::comma_sheet("player,date\n");
  Faults faults;
  const CareSheet cells(sheet, kKnown, forms, faults);
  EXPECT_TRUE(cells.rows().empty());
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].found, "headings only");
}

}  // namespace
}  // namespace lanework::care
