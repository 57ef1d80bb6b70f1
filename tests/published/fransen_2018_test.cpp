// Fransen, Bush, Woodcock, et al. 2018, doi 10.1123/pes.2017-0009. The coefficients were read in transcriptions.
#include <gtest/gtest.h>

#include "core/care/growth/maturity.h"

namespace lanework::care::growth {
namespace {

TEST(Fransen2018, WorkedExample) {
  const double ratio = fransen_2018_ratio(13.0, 158, 77, 47);
  EXPECT_NEAR(ratio, 0.940, 0.001);
  EXPECT_NEAR(13.0 / ratio, 13.82, 0.01);
}

// A widely used table prints minus for the constant, which gives about -13.
TEST(Fransen2018, TheConstantIsPlus) {
  EXPECT_GT(fransen_2018_ratio(13.0, 158, 77, 47), 0);
  EXPECT_NEAR(fransen_2018_ratio(13.0, 158, 77, 47) - 2 * 6.986547255416, -13.0, 0.05);
  EXPECT_DOUBLE_EQ(fransen_2018_ratio(0, 0, 0, 0), 6.986547255416);
}

TEST(Fransen2018, BoysOf8To17Only) {
  GrowthPerson person;
  person.born = Date{0};
  BodyMeasurement measured{Date{4748}, 158, 81, 47, 1};
  person.sex = Sex::kBoy;
  ASSERT_TRUE(maturity_ratio(person, measured));
  EXPECT_NEAR(maturity_ratio(person, measured)->age_at_spurt, 13.82, 0.01);
  measured.date = Date{2900};  // 7.9 years
  EXPECT_FALSE(maturity_ratio(person, measured));
  measured.date = Date{6220};  // 17.03 years
  EXPECT_FALSE(maturity_ratio(person, measured));
  measured.date = Date{4748};
  person.sex = Sex::kGirl;
  EXPECT_FALSE(maturity_ratio(person, measured));
  person.sex = {};
  EXPECT_FALSE(maturity_ratio(person, measured));
}

}  // namespace
}  // namespace lanework::care::growth
