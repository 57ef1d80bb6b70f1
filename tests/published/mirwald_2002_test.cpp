// Mirwald, Baxter-Jones, Bailey, Beunen 2002, doi 10.1097/00005768-200204000-00020. The coefficients were read in two
// tables and a calculator's text; the values are worked from them by hand.
#include <gtest/gtest.h>

#include "core/care/growth/maturity.h"

namespace lanework::care::growth {
namespace {

TEST(Mirwald2002, WorkedExamples) {
  EXPECT_NEAR(mirwald_2002_offset(Sex::kBoy, 13.0, 158, 81, 47), -0.931, 0.005);
  EXPECT_NEAR(mirwald_2002_offset(Sex::kBoy, 14.5, 172, 89, 60), 0.875, 0.005);
  EXPECT_NEAR(mirwald_2002_offset(Sex::kGirl, 12.0, 152, 79, 42), -0.040, 0.005);
  EXPECT_NEAR(mirwald_2002_offset(Sex::kGirl, 13.0, 160, 84, 50), 1.054, 0.005);
  EXPECT_NEAR(13.0 - mirwald_2002_offset(Sex::kBoy, 13.0, 158, 81, 47), 13.93, 0.005);
}

// A transcription drops the factor 100 of mass over height.
TEST(Mirwald2002, TheFactorOf100IsThere) {
  const double boy = mirwald_2002_offset(Sex::kBoy, 13.0, 158, 81, 47);
  const double girl = mirwald_2002_offset(Sex::kGirl, 12.0, 152, 79, 42);
  EXPECT_GT(boy + 1.606, 0.5);
  EXPECT_GT(girl + 2.145, 0.5);
  EXPECT_NEAR(boy - 0.02292 * 99 * 47 / 158, -1.606, 0.005);  // what the misprint would give
  EXPECT_NEAR(girl - 0.07693 * 99 * 42 / 152, -2.145, 0.005);
}

TEST(Mirwald2002, ItsErrorsAreCarried) {
  GrowthPerson person;
  person.born = Date{0};
  const BodyMeasurement measured{Date{4748}, 158, 81, 47, 1};  // 13.0 years
  person.sex = Sex::kBoy;
  EXPECT_EQ(offsets(person, measured).front().standard_error, 0.59);
  person.sex = Sex::kGirl;
  EXPECT_EQ(offsets(person, measured).front().standard_error, 0.57);
}

}  // namespace
}  // namespace lanework::care::growth
