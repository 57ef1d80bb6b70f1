#include "core/care/growth/growth_reading.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/care/growth/a_player.h"

namespace lanework::care::growth {
namespace {

using test::a_player;
using test::day;
using test::height_on;
using test::shipped_table;

const Date kToday = day("2026-11-26");

FastGrowth fast(const GrowthPerson& person, const std::vector<BodyMeasurement>& measured, Date on = kToday) {
  return fast_growth(shipped_table(), person, measured, on);
}

TEST(FastGrowth, NineCentimetresInAYearAreLikely) {
  const FastGrowth found = fast(a_player(), {height_on("2025-11-26", 149), height_on("2026-11-26", 158)});
  EXPECT_EQ(found.grows_fast, GrowsFast::kLikely);
  EXPECT_TRUE(found.on);
}

TEST(FastGrowth, TwoPointOneIn104DaysCannotBeToldAndIsOn) {
  const FastGrowth found = fast(a_player(), {height_on("2026-08-14", 155.9), height_on("2026-11-26", 158)});
  EXPECT_EQ(found.grows_fast, GrowsFast::kCannotBeTold);
  EXPECT_TRUE(found.on);
}

TEST(FastGrowth, ModerateButNotToldApartIsOnOnlyNearTheSpurt) {
  const std::vector<BodyMeasurement> near = {height_on("2026-08-28", 156.8), height_on("2026-11-26", 158)};
  EXPECT_EQ(fast(a_player(), near).grows_fast, GrowsFast::kCannotBeTold);
  EXPECT_TRUE(fast(a_player(), near).on);
  GrowthPerson young = a_player();
  young.born = day("2017-11-26");  // 9 years, far before the spurt
  const std::vector<BodyMeasurement> far = {height_on("2026-08-28", 130.8), height_on("2026-11-26", 132)};
  EXPECT_EQ(fast(young, far).grows_fast, GrowsFast::kCannotBeTold);
  EXPECT_FALSE(fast(young, far).on);
}

TEST(FastGrowth, ClearlySlowIsOff) {
  const FastGrowth found = fast(a_player(), {height_on("2025-11-26", 154), height_on("2026-11-26", 158)});
  EXPECT_EQ(found.grows_fast, GrowsFast::kUnlikely);
  EXPECT_FALSE(found.on);
}

TEST(FastGrowth, MeasuredOnceOnWhereTheSpurtMayBeNow) {
  EXPECT_TRUE(fast(a_player(), {height_on("2026-11-26", 158)}).on);   // -0.6 by height
  EXPECT_FALSE(fast(a_player(), {height_on("2026-11-26", 140)}).on);  // -1.4
  // Without a sex the girls' equation counts too, and puts the spurt at hand.
  EXPECT_TRUE(fast(a_player({}), {height_on("2026-11-26", 140)}).on);
}

TEST(FastGrowth, WithoutABirthDateTheCarefulSide) {
  GrowthPerson person = a_player({});
  person.born = {};
  EXPECT_TRUE(fast(person, {height_on("2026-11-26", 130)}).on);
  EXPECT_TRUE(fast(person, {height_on("2026-08-28", 130), height_on("2026-11-26", 131.2)}).on);
  EXPECT_FALSE(fast(person, {height_on("2025-11-26", 130), height_on("2026-11-26", 134)}).on);  // clearly slow
  EXPECT_FALSE(fast(person, {}).on);
}

TEST(FastGrowth, WhatIsOldIsNotBelieved) {
  const std::vector<BodyMeasurement> slow = {height_on("2025-11-26", 154), height_on("2026-11-26", 158)};
  EXPECT_EQ(fast(a_player(), slow, day("2027-05-25")).grows_fast, GrowsFast::kUnlikely);  // 180 days
  EXPECT_EQ(fast(a_player(), slow, day("2027-05-26")).grows_fast, GrowsFast::kCannotBeTold);
  EXPECT_TRUE(fast(a_player(), slow, day("2027-05-26")).on);
}

TEST(FastGrowth, TooLongABetweenHidesWhatIsNow) {
  const FastGrowth found = fast(a_player(), {height_on("2025-01-26", 152), height_on("2026-11-26", 158)});
  EXPECT_EQ(found.grows_fast, GrowsFast::kCannotBeTold);
  EXPECT_TRUE(found.on);
}

// Knowing less never spares less: without a sex, or without a birth date, on stays on.
TEST(FastGrowth, TheUnknownIsOnTheCarefulSide) {
  EXPECT_TRUE(rc::check([] {
    GrowthPerson person = a_player(*rc::gen::element(Sex::kBoy, Sex::kGirl));
    person.born = Date{kToday.days_since_epoch - *rc::gen::inRange(3000, 6500)};
    const int before = *rc::gen::inRange(30, 600);
    const double first = *rc::gen::inRange(1200, 1800) / 10.0;
    std::vector<BodyMeasurement> measured = {{Date{kToday.days_since_epoch - before}, first, {}, {}, 1},
                                             {kToday, first + *rc::gen::inRange(-5, 120) / 10.0, {}, {}, 2}};
    if (*rc::gen::inRange(0, 4) == 0) measured.erase(measured.begin());
    const bool on = fast(person, measured).on;
    GrowthPerson no_sex = person;
    no_sex.sex = {};
    RC_ASSERT(!on || fast(no_sex, measured).on);
    GrowthPerson no_birth = no_sex;
    no_birth.born = {};
    RC_ASSERT(!fast(no_sex, measured).on || fast(no_birth, measured).on);
  }));
}

// At or above the cut is on, whatever else; beyond the error below it is off.
TEST(FastGrowth, FollowsTheCut) {
  EXPECT_TRUE(rc::check([] {
    const int days = *rc::gen::inRange(90, 400);
    const double change = *rc::gen::inRange(-10, 150) / 10.0;
    const std::vector<BodyMeasurement> measured = {{Date{kToday.days_since_epoch - days}, 150, {}, {}, 1},
                                                   {kToday, 150 + change, {}, {}, 2}};
    const auto velocity = height_velocity(shipped_table(), measured);
    const FastGrowth found = fast(a_player(), measured);
    if (velocity->cm_a_year >= 7.2) RC_ASSERT(found.on);
    if (velocity->high < 7.2) RC_ASSERT(!found.on && found.grows_fast == GrowsFast::kUnlikely);
    if (velocity->low >= 7.2) RC_ASSERT(found.grows_fast == GrowsFast::kLikely);
  }));
}

TEST(FastGrowth, TheReasonHoldsNoMeasure) {
  for (const double height : {120.0, 140.0, 158.0, 170.0}) {
    const std::string why =
        fast(a_player(), {height_on("2026-08-28", height - 2), height_on("2026-11-26", height)}).why;
    EXPECT_EQ(why.find_first_of("0123456789"), std::string::npos) << why;
  }
}

TEST(GrowthReading, OffHoldsNothing) {
  EXPECT_TRUE(rc::check([] {
    GrowthPerson person = a_player();
    switch (*rc::gen::inRange(0, 3)) {
      case 0:
        person.agreement.consent = {};
        break;
      case 1:
        person.agreement.assent = {};
        break;
      default:
        person.agreement.withdrawn = Date{kToday.days_since_epoch - *rc::gen::inRange(0, 100)};
    }
    const GrowthReading found =
        read_growth(shipped_table(), person, {height_on("2026-02-01", 150), height_on("2026-11-20", 158)}, kToday);
    RC_ASSERT(found.state != AgreementState::kOn);
    RC_ASSERT(found.measured.empty() && found.offsets.empty() && !found.ratio && !found.adult && !found.velocity);
    RC_ASSERT(!found.fast && !found.due && !found.ask_again && found.from_before_agreement == 0);
  }));
}

TEST(GrowthReading, WhatWasMeasuredBeforeTheAgreementIsLeftOut) {
  const GrowthReading found =
      read_growth(shipped_table(), a_player(),
                  {height_on("2025-11-26", 149), height_on("2026-01-09", 150), height_on("2026-11-20", 158)}, kToday);
  EXPECT_EQ(found.from_before_agreement, 2);
  ASSERT_EQ(found.measured.size(), 1U);
  EXPECT_FALSE(found.velocity);
}

TEST(GrowthReading, AWholeOne) {
  const std::vector<BodyMeasurement> measured = {{day("2026-08-14"), 155.9, 80, 45, 2},
                                                 {day("2026-11-26"), 158, 81, 47, 3}};
  const GrowthReading found = read_growth(shipped_table(), a_player(), measured, kToday);
  EXPECT_EQ(found.state, AgreementState::kOn);
  EXPECT_EQ(found.offsets.size(), 3U);
  EXPECT_NEAR(found.offsets.front().years, -0.931, 0.005);
  EXPECT_TRUE(found.ratio);
  EXPECT_TRUE(found.adult->height);
  EXPECT_NEAR(found.velocity->cm_a_year, 7.38, 0.01);
  EXPECT_TRUE(found.fast->on);
  EXPECT_EQ(found.due, day("2027-02-24"));
}

}  // namespace
}  // namespace lanework::care::growth
