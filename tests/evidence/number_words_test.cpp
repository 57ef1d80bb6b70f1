#include "core/evidence/number_words.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>
#include <string>

namespace lanework::evidence {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();

TEST(NumberWords, ThreeDigits) {
  EXPECT_EQ(in_digits(4), "4.00");
  EXPECT_EQ(in_digits(0.024681), "0.0247");
  EXPECT_EQ(in_digits(12.34), "12.3");
  EXPECT_EQ(in_digits(1250), "1250");
  EXPECT_EQ(in_digits(-1.194), "-1.19");
  EXPECT_EQ(in_digits(9.996), "10.0");
  EXPECT_EQ(in_digits(0.9996), "1.00");
  EXPECT_EQ(in_digits(99.96), "100");
  EXPECT_EQ(in_digits(0), "0");
}

TEST(NumberWords, AsShortAsCountsAre) {
  EXPECT_EQ(as_counted(61), "61");
  EXPECT_EQ(as_counted(6.5), "6.5");
  EXPECT_EQ(as_counted(70440), "70440");
  EXPECT_EQ(as_counted(0), "0");
  EXPECT_EQ(as_counted(100), "100");
}

TEST(NumberWords, NeverNanNorInf) {
  EXPECT_EQ(limits_words({1.5, kInfinite}), "1.50 and upwards");
  EXPECT_EQ(in_digits(std::nan("")), "unknown");
  EXPECT_EQ(in_digits(kInfinite), "without limit");
}

TEST(NumberWords, PValuesAndLevels) {
  EXPECT_EQ(p_words(0.0004), "p < 0.001");
  EXPECT_EQ(p_words(0.0355), "p = 0.035");
  EXPECT_EQ(p_words(0.38), "p = 0.38");
  EXPECT_EQ(p_words(1), "p = 1.00");
  EXPECT_EQ(level_words(0.95), "95 %");
  EXPECT_EQ(level_words(0.999), "99.9 %");
}

TEST(NumberWords, Counts) {
  EXPECT_EQ(counted(1, "week", "weeks"), "one week");
  EXPECT_EQ(counted(0, "week", "weeks"), "0 weeks");
  EXPECT_EQ(hours_words(1), "1 hour");
  EXPECT_EQ(hours_words(12.25), "12.2 hours");
  EXPECT_EQ(hours_words(46009), "46009 hours");
}

TEST(NumberWords, InSpanish) {
  const NumberWords words(Language::kSpanish);
  EXPECT_EQ(words.in_digits(0.024681), "0,0247");
  EXPECT_EQ(words.limits_words({1.3, 9.33}), "1,30 a 9,33");
  EXPECT_EQ(words.limits_words({1.5, kInfinite}), "1,50 o más");
  EXPECT_EQ(words.in_digits(kInfinite), "sin límite");
  EXPECT_EQ(words.level_words(0.999), "99,9 %");
  EXPECT_EQ(words.hours_words(12.25), "12,2 horas");
  EXPECT_EQ(words.hours_words(1), "1 hora");
  EXPECT_EQ(words.grouped(28350), "28\u00A0350");
  EXPECT_EQ(words.grouped(8350), "8350");
  EXPECT_EQ(words.counted(1, {"one squad", "un equipo"}, {"{} squads", "{} equipos"}), "un equipo");
  EXPECT_EQ(words.counted(3, {"one squad", "un equipo"}, {"{} squads", "{} equipos"}), "3 equipos");
  EXPECT_EQ(words.needed_words(needed_to_treat(0.5, {0.2, 0.8}), kInjuryWords, {"such seasons", "temporadas así"}),
            "una lesión menos por cada 2,0 temporadas así (1,2 a 5,0)");
  EXPECT_EQ(words.needed_words(needed_to_treat(3, {2, 4}), kInjuryWords, {"such seasons", "temporadas así"}),
            "3,0 lesiones menos en cada una de las temporadas así (2,0 a 4,0)");
  EXPECT_EQ(NumberWords(Language::kEnglish).grouped(8350), grouped(8350));
}

// What is printed is the number to half a unit of its third digit.
RC_GTEST_PROP(NumberWords, IsWithinHalfADigit, ()) {
  const double value = (*rc::gen::inRange(1, 1'000'000)) * std::pow(10.0, *rc::gen::inRange(-8, 4));
  const double printed = std::stod(in_digits(value));
  RC_ASSERT(std::abs(printed / value - 1) <= 0.00501);
}

}  // namespace
}  // namespace lanework::evidence
