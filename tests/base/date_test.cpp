#include "core/base/date.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework {
namespace {

TEST(Date, KnowsItsEpochAndWeekdays) {
  EXPECT_EQ(make_date(1970, 1, 1)->days_since_epoch, 0);
  EXPECT_EQ(make_date(2000, 3, 1)->days_since_epoch, 11017);
  EXPECT_EQ(to_words(*make_date(2026, 11, 26)), "Thursday 26 November 2026");
}

TEST(Date, RefusesDaysThatDoNotExist) {
  EXPECT_FALSE(make_date(2026, 2, 29));
  EXPECT_TRUE(make_date(2024, 2, 29));
  EXPECT_FALSE(make_date(1900, 2, 29));
  EXPECT_FALSE(parse_iso_date("2026-13-01"));
  EXPECT_FALSE(parse_iso_date("26-11-2026"));
}

TEST(Date, CivilAndBackAgree) {
  EXPECT_TRUE(rc::check([](void) {
    const int days = *rc::gen::inRange(-25567, 84370);  // 1900 to 2200
    const CivilDate c = civil(Date{days});
    RC_ASSERT(make_date(c.year, c.month, c.day)->days_since_epoch == days);
    RC_ASSERT(parse_iso_date(to_iso(Date{days}))->days_since_epoch == days);
  }));
}

TEST(Date, AgeChangesOnTheBirthday) {
  EXPECT_EQ(age_in_years(*make_date(2013, 11, 27), *make_date(2026, 11, 26)), 12);
  EXPECT_EQ(age_in_years(*make_date(2013, 11, 26), *make_date(2026, 11, 26)), 13);
  EXPECT_EQ(age_in_years(*make_date(2012, 2, 29), *make_date(2026, 2, 28)), 13);
}

TEST(TimeOfDay, ReadsAndWraps) {
  EXPECT_EQ(parse_time_of_day("18:00")->minutes, 1080);
  EXPECT_EQ(parse_time_of_day("18:00:00")->minutes, 1080);
  EXPECT_EQ(parse_time_of_day("18:00:59")->minutes, 1080);
  EXPECT_FALSE(parse_time_of_day("24:00"));
  for (const char* text : {"18:00:60", "18:00:0x", "18:00:", "18:00:00.5", "18:00:00Z", "18:00:00+02:00", "18:00Z"}) {
    EXPECT_FALSE(parse_time_of_day(text)) << text;
  }
  EXPECT_EQ(to_text(TimeOfDay{1450}), "00:10");
}

}  // namespace
}  // namespace lanework
