#include "core/care/load/week_load.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/care/load/weighted_mean.h"

namespace lanework::care::load {
namespace {

TEST(WeekLoad, NotApplicableWhereEveryDayIsAlike) {
  for (const double day : {0.0, 300.0, 0.1}) {
    const WeekLoad week = week_load({day, day, day, day, day, day, day});
    EXPECT_FALSE(week.monotony) << day;
    EXPECT_FALSE(week.strain) << day;
    EXPECT_EQ(week.deviation, 0) << day;
  }
}

TEST(WeekLoad, DoesNotDependOnTheOrderOfTheDaysNorMonotonyOnTheUnit) {
  EXPECT_TRUE(rc::check([] {
    std::array<double, kDaysAWeek> days{};
    for (double& day : days) day = *rc::gen::inRange(0, 900);
    days[0] += 1;
    days[6] = 0;
    std::array<double, kDaysAWeek> other = days;
    std::rotate(other.begin(), other.begin() + *rc::gen::inRange(1, kDaysAWeek), other.end());
    const WeekLoad week = week_load(days);
    RC_ASSERT(std::abs(*week.monotony - *week_load(other).monotony) < 1e-9);
    for (double& day : other) day *= 3;
    RC_ASSERT(std::abs(*week.monotony - *week_load(other).monotony) < 1e-9);
    RC_ASSERT(std::abs(3 * week.total - week_load(other).total) < 1e-9);
  }));
}

TEST(WeightedMeans, AConstantLoadStaysExactlyWhatItIs) {
  EXPECT_TRUE(rc::check([] {
    const double load = *rc::gen::inRange(0, 100'000) / 100.0;
    for (const int days : {kShortDays, kLongDays}) {
      for (const double mean : weighted_means(load, std::vector<double>(60, load), days)) RC_ASSERT(mean == load);
    }
  }));
}

TEST(WeightedMeans, StayBetweenTheLeastAndTheMost) {
  EXPECT_TRUE(rc::check([] {
    std::vector<double> loads(static_cast<std::size_t>(*rc::gen::inRange(1, 60)));
    for (double& load : loads) load = *rc::gen::inRange(0, 1000);
    for (const double mean : weighted_means(500, loads, kLongDays)) RC_ASSERT(mean >= 0 && mean <= 1000);
  }));
}

// After 28 days the longer mean has left most of its seed behind, and the shorter all but nothing of it.
TEST(WeightedMeans, TheSeedFades) {
  const std::vector<double> none(kSettledAfterDays, 0.0);
  EXPECT_LT(weighted_means(100, none, kLongDays).back(), 14);
  EXPECT_LT(weighted_means(100, none, kShortDays).back(), 0.1);
}

}  // namespace
}  // namespace lanework::care::load
