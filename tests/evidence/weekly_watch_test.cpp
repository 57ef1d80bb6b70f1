// Watching week by week: with the same hours every week it is the sum of cusum.h, and alarms to be expected are those
// that are seen.
#include "core/evidence/weekly_watch.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <boost/random/poisson_distribution.hpp>
#include <cmath>
#include <vector>

#include "core/evidence/cusum.h"
#include "core/evidence/random_engine.h"

namespace lanework::evidence {
namespace {

std::vector<double> uneven_hours() {
  std::vector<double> hours;
  for (int week = 0; week < 40; ++week) hours.push_back(week % 7 == 3 ? 0 : 300 + 40 * (week % 5));
  return hours;
}

// Poisson counts with mean 0.25, reference 0.25, alarm at 10: 1 alarm in 438 weeks (Lucas JM, Technometrics 1985, doi
// 10.1080/00401706.1985.10488030): over so many weeks that the start no longer counts.
TEST(WeeklyWatch, SameHoursEveryWeekAreAsInTheTable) {
  // Reference 0.25 exactly: usual and changed rates whose likelihood ratio gives it are solved for.
  const double usual = 0.2;
  double low = usual * 1.0001;
  double high = 2;
  for (int step = 0; step < 200; ++step) {
    const double middle = (low + high) / 2;
    (reference_value(usual, middle) < 0.25 ? low : high) = middle;
  }
  const WatchPlan plan{usual, low, 4, 40};
  const std::vector<double> hours(60000, 1.0);
  EXPECT_NEAR(60000 / alarms_expected(plan, hours, 0.25), 438.125, 1.5);
}

TEST(WeeklyWatch, AlarmsExpectedAreThoseSeen) {
  const std::vector<double> hours = uneven_hours();
  for (const double times : {1.0, 2.0}) {
    WatchPlan plan{0.002, 0.004, 20, 60};
    constexpr int kSeasons = 20000;
    double seen = 0;
    for (std::uint32_t season = 0; season < kSeasons; ++season) {
      RandomEngine engine(5, 1, 0, season);
      std::vector<Counted> weeks;
      for (const double one : hours) {
        std::int64_t events = 0;
        if (one > 0)
          events = boost::random::poisson_distribution<std::int64_t, double>(plan.usual_rate * times * one)(engine);
        weeks.push_back({events, one});
      }
      for (const WatchedWeek& week : watch_weeks(plan, weeks)) seen += week.alarm ? 1 : 0;
    }
    const double expected = alarms_expected(plan, hours, plan.usual_rate * times);
    // Four standard errors of a count of alarms.
    EXPECT_NEAR(seen / kSeasons, expected, 4 * std::sqrt(expected / kSeasons)) << times;
  }
}

TEST(WeeklyWatch, DecisionLimitIsTheLeastThatKeepsToFalseAlarms) {
  const std::vector<double> hours = uneven_hours();
  WatchPlan plan{0.003, 0.006, 20, 1};
  for (const double most : {0.1, 0.5, 2.0}) {
    plan.decision = decision_for_alarms(plan, hours, most, 4000);
    EXPECT_LE(alarms_expected(plan, hours, plan.usual_rate), most);
    --plan.decision;
    EXPECT_GT(alarms_expected(plan, hours, plan.usual_rate), most);
  }
}

TEST(WeeklyWatch, WeeksWithoutHoursChangeNothing) {
  const WatchPlan plan{0.002, 0.004, 20, 40};
  const std::vector<Counted> weeks = {{2, 300}, {0, 0}, {0, 0}, {0, 300}};
  const std::vector<WatchedWeek> path = watch_weeks(plan, weeks);
  EXPECT_EQ(path[0].sum, path[1].sum);
  EXPECT_EQ(path[0].sum, path[2].sum);
  EXPECT_LT(path[3].sum, path[2].sum);
}

// To watch for fewer is the mirror: quiet weeks raise the sum.
TEST(WeeklyWatch, WatchesForFewerToo) {
  const WatchPlan plan{0.004, 0.002, 20, 60};
  const std::vector<WatchedWeek> path = watch_weeks(plan, std::vector<Counted>(4, Counted{0, 400}));
  EXPECT_GT(path[1].sum, path[0].sum);
  EXPECT_TRUE(path[3].alarm || path[2].alarm);
}

}  // namespace
}  // namespace lanework::evidence
