#include "core/release/period.h"

#include <gtest/gtest.h>

#include "tests/release/club_of_test.h"

namespace lanework::release {
namespace {

using test::day;
using test::kAutumn;
using test::kNextSeason;
using test::kSeason;
using test::kSpring;

std::string refusal(const Period& period, const std::vector<Period>& earlier, const char* today = "2030-01-01") {
  const auto refused = period_refused(period, earlier, day(today));
  return refused ? refused->fault.expected : "";
}

TEST(Period, AHalfAndThenItsSeasonAndThenTheNext) {
  EXPECT_EQ(refusal(kAutumn, {}), "");
  EXPECT_EQ(refusal(kSeason, {kAutumn}), "");
  EXPECT_EQ(refusal(kNextSeason, {kAutumn, kSeason}), "");
  EXPECT_EQ(refusal(kSeason, {kAutumn, kSpring}), "") << "nothing is left, and that is well";
  EXPECT_EQ(new_days(kSeason, {kAutumn, kSpring}), 0);
  EXPECT_EQ(new_days(kSeason, {kAutumn}), days_of(kSpring));
}

TEST(Period, EachRefusalHasAKeyOfItsOwn) {
  const auto key = [](const Period& period, const std::vector<Period>& earlier, const char* today = "2030-01-01") {
    const auto refused = period_refused(period, earlier, day(today));
    return std::string(refused ? refused->key : "");
  };
  EXPECT_EQ(key(kAutumn, {}), "");
  EXPECT_EQ(key({kAutumn.until, kAutumn.from}, {}), "ends-before-it-begins");
  EXPECT_EQ(key({day("2026-08-01"), day("2026-08-31")}, {}), "no-season-or-half");
  EXPECT_EQ(key(kAutumn, {}, "2026-10-01"), "not-over");
  EXPECT_EQ(key(kAutumn, {kAutumn}), "released-already");
  EXPECT_EQ(key({day("2026-10-01"), day("2027-02-28")}, {kAutumn}), "overlaps-a-release");
  EXPECT_EQ(key({day("2026-07-01"), day("2027-07-30")}, {kAutumn, kSeason}), "holds-an-older-release");
  EXPECT_EQ(key({day("2026-08-01"), day("2027-01-31")}, {kAutumn}), "too-few-new-days");
}

TEST(Period, WhatWasReleasedIsFrozen) {
  EXPECT_NE(refusal(kAutumn, {kAutumn}).find("frozen"), std::string::npos);
  EXPECT_NE(refusal(kSpring, {kSeason}), "") << "a piece of what was given out";
  EXPECT_NE(refusal({day("2026-10-01"), day("2027-02-28")}, {kAutumn}), "") << "half of a half";
}

TEST(Period, NoPiecesThatSubtractingMakesSmall) {
  EXPECT_NE(refusal({day("2026-08-01"), day("2026-08-31")}, {}), "");
  EXPECT_NE(refusal({day("2026-08-01"), day("2027-01-31")}, {kAutumn}), "") << "January would come out";
  EXPECT_NE(refusal({day("2026-07-01"), day("2027-07-30")}, {kAutumn, kSeason}), "") << "halves within seasons only";
}

TEST(Period, NotBeforeItIsOver) {
  EXPECT_NE(refusal(kAutumn, {}, "2026-12-31"), "");
  EXPECT_EQ(refusal(kAutumn, {}, "2027-01-01"), "");
  EXPECT_NE(refusal({day("2026-12-31"), day("2026-08-01")}, {}), "");
}

}  // namespace
}  // namespace lanework::release
