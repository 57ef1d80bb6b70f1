#include "core/records/numbers.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework::records::test {
namespace {

using Problem = ReadNumber::Problem;

std::int64_t value(const char* text, DecimalMark mark = DecimalMark::kAsTheCellTells) {
  const ReadNumber number = read_number(text, mark);
  EXPECT_EQ(number.problem, Problem::kNone) << text;
  return number.thousandths;
}
Problem problem(const char* text, DecimalMark mark = DecimalMark::kAsTheCellTells) {
  return read_number(text, mark).problem;
}

TEST(Numbers, AsSpreadsheetsExportThem) {
  EXPECT_EQ(value("90"), 90'000);
  EXPECT_EQ(value("90.0"), 90'000);
  EXPECT_EQ(value("1.5"), 1'500);
  EXPECT_EQ(value("1,5"), 1'500);
  EXPECT_EQ(value("0.1234"), 123);
  EXPECT_EQ(value("0.1235"), 124);
  EXPECT_EQ(value("1 350"), 1'350'000);
  EXPECT_EQ(value("1'350.5"), 1'350'500);
  EXPECT_EQ(value("1,350.5"), 1'350'500);
  EXPECT_EQ(value("1,234,567"), 1'234'567'000);
  EXPECT_EQ(value("1.350", DecimalMark::kComma), 1'350'000);
  EXPECT_EQ(value("1.350,5", DecimalMark::kComma), 1'350'500);
  EXPECT_EQ(value("1,350", DecimalMark::kComma), 1'350);
  EXPECT_EQ(value("1,350", DecimalMark::kPoint), 1'350'000);
  EXPECT_EQ(value("1.350"), 1'350);  // a point is a decimal point unless the mapping says otherwise
  EXPECT_EQ(value("1e6"), 1'000'000'000);
  EXPECT_EQ(value("1.5E+03"), 1'500'000);
  EXPECT_EQ(value("15e-1"), 1'500);
  EXPECT_EQ(value("9e99"), kMostThousandths);
  EXPECT_EQ(value("0e999"), 0);
  EXPECT_EQ(value("-0"), 0);
}

TEST(Numbers, WhatCannotBeReadSaysWhy) {
  EXPECT_EQ(problem("1,350"), Problem::kTwoWays);
  EXPECT_EQ(problem("-5"), Problem::kNegative);
  EXPECT_EQ(problem("\u22125"), Problem::kNegative);
  for (const char* text : {"x", "1.2.3", "1,35,0", ".5", "5.", "1e", "1ee3", "", "12a"})
    EXPECT_EQ(problem(text), Problem::kNoNumber) << text;
  EXPECT_EQ(problem("1,5", DecimalMark::kPoint), Problem::kNoNumber);
  EXPECT_EQ(problem(std::string(1000, '-').c_str()), Problem::kNoNumber);
}

TEST(Durations, StateTheirUnitOrLeaveItOpen) {
  const auto minutes = [](const char* text) {
    const ReadNumber number = read_duration(text, DecimalMark::kAsTheCellTells);
    EXPECT_EQ(number.problem, Problem::kNone) << text;
    EXPECT_TRUE(number.stated) << text;
    return number.stated == DurationUnit::kHours ? number.thousandths * 60 : number.thousandths;
  };
  for (const char* text : {"90 min", "90min", "90 Minutes", "90'", "1:30", "1:30:00", "01:30", "1h30", "1 h 30",
                           "1.5 h", "1,5h", "1.5 hours", "1.5 hrs"})
    EXPECT_EQ(minutes(text), 90'000) << text;
  EXPECT_FALSE(read_duration("90", DecimalMark::kAsTheCellTells).stated);
  EXPECT_EQ(read_duration("1:75", DecimalMark::kAsTheCellTells).problem, Problem::kNoNumber);
  EXPECT_EQ(read_duration("min", DecimalMark::kAsTheCellTells).problem, Problem::kNoNumber);
}

TEST(Numbers, EveryWholeNumberIsReadAsItself) {
  EXPECT_TRUE(rc::check([](std::uint32_t number) {
    RC_ASSERT(read_number(std::to_string(number), DecimalMark::kAsTheCellTells).thousandths ==
              number * std::int64_t{1000});
  }));
}

}  // namespace
}  // namespace lanework::records::test
