// Seasons drawn with a truth that is known: the model finds it as often as its limits say, and says why where it
// cannot.
#include "core/findings/warm_up_model.h"

#include <gtest/gtest.h>

#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>

#include "core/evidence/random_engine.h"
#include "core/findings/reach.h"
#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

using evidence::RandomEngine;

double even(RandomEngine& engine) { return uniform_from(engine()); }

// 16 squads, 30 weeks of two trainings and a match; a warm-up a week more multiplies the rate.
records::Season drawn(double times, std::uint32_t run, double rate = 0.006) {
  RandomEngine engine(20261126, 6, 0, run);
  boost::random::normal_distribution<double> effect(0, 0.3);
  records::Season season;
  const Date first = day(1, 5);
  season.period = {first, Date{first.days_since_epoch + 7 * 30 - 1}, Date{first.days_since_epoch + 7 * 30 + 30}};
  for (std::uint32_t number = 0; number < 16; ++number) {
    season.squads.push_back(squad("s" + std::to_string(number), "", number % 2 == 0 ? "U13" : "U15"));
    const double own = rate * std::exp(effect(engine));
    const double keen = even(engine);
    std::vector<double> doses;
    for (int week = 0; week < 30; ++week) {
      double done = 0;
      double hours = 0;
      for (const int weekday : {1, 3, 5}) {
        const bool warmed = even(engine) < keen;
        const int played = 15 + static_cast<int>(10 * even(engine));
        done += warmed ? 1 : 0;
        hours += played;
        season.exposures.push_back(session(number, Date{first.days_since_epoch + 7 * week + weekday},
                                           weekday == 5 ? records::Setting::kMatch : records::Setting::kTraining,
                                           played, warmed ? records::WarmUp::kMost : records::WarmUp::kNo));
      }
      doses.push_back(done);
      double dose = 0;
      const std::size_t kept = std::min(doses.size(), kLateWeeks);
      for (std::size_t i = 0; i < kept; ++i) dose += doses[doses.size() - 1 - i] / static_cast<double>(kept);
      const int injuries =
          boost::random::poisson_distribution<int, double>(own * hours * std::pow(times, dose))(engine);
      for (int n = 0; n < injuries; ++n) {
        const Date on{first.days_since_epoch + 7 * week + 1};
        season.injuries.push_back(injury(number, on, Date{on.days_since_epoch + 8}));
      }
    }
  }
  return season;
}

WarmUpModel model_of(const records::Season& season) {
  return warm_up_model(season, records::hours_by_week(season), 0.95);
}

TEST(WarmUpModel, HoldsTheTruthMostTimes) {
  int held = 0;
  double sum = 0;
  constexpr int kSeasons = 60;
  for (std::uint32_t run = 0; run < kSeasons; ++run) {
    const WarmUpModel model = model_of(drawn(0.75, run));
    ASSERT_FALSE(model.why_not) << *model.why_not;
    held += model.limits.low <= 0.75 && 0.75 <= model.limits.high ? 1 : 0;
    sum += std::log(model.times) / kSeasons;
    ASSERT_TRUE(model.averted);
    EXPECT_LE(model.averted->limits.low, model.averted->injuries);
    EXPECT_GE(model.averted->limits.high, model.averted->injuries);
  }
  EXPECT_GE(held, 53);
  EXPECT_NEAR(std::exp(sum), 0.75, 0.03);
}

TEST(WarmUpModel, AvertedIsWhatTheTruthWouldHave) {
  // By the truth, against none: each hour has times^dose of the rate; averted are hours x rate x (1 - times^dose).
  double found = 0;
  double expected = 0;
  for (std::uint32_t run = 0; run < 30; ++run) {
    const records::Season season = drawn(0.7, run);
    const WarmUpModel model = model_of(season);
    found += model.averted->injuries / 30;
    expected += static_cast<double>(season.injuries.size()) * (std::pow(0.7, -model.mean_warm_ups) - 1) / 30;
  }
  EXPECT_NEAR(found / expected, 1, 0.2);
}

TEST(WarmUpModel, NoEffectIsSeldomSeen) {
  int seen = 0;
  for (std::uint32_t run = 0; run < 60; ++run) {
    const WarmUpModel model = model_of(drawn(1, run));
    seen += model.limits.high < 1 || model.limits.low > 1 ? 1 : 0;
  }
  EXPECT_LE(seen, 9);
}

TEST(WarmUpModel, SaysWhyThereIsNone) {
  records::Season season = drawn(0.8, 1);
  records::Season none = season;
  none.injuries.clear();
  EXPECT_NE(model_of(none).why_not->find("no event at all"), std::string::npos);
  records::Season unknown = season;
  for (records::Exposure& exposure : unknown.exposures) exposure.warm_up.reset();
  EXPECT_NE(model_of(unknown).why_not->find("of no week is it known"), std::string::npos);
  records::Season same = season;
  for (records::Exposure& exposure : same.exposures) exposure.warm_up = records::WarmUp::kNo;
  EXPECT_NE(model_of(same).why_not->find("'warm_ups' is 0 in every row"), std::string::npos);
}

TEST(WarmUpModel, TermsThatCannotBeToldApartAreLeftOutAndNamed) {
  records::Season season = drawn(0.8, 2);
  // All injuries in one age band.
  std::erase_if(season.injuries, [](const records::InjuryRecord& one) { return one.squad % 2 == 0; });
  const WarmUpModel model = model_of(season);
  ASSERT_FALSE(model.why_not);
  ASSERT_EQ(model.left_out.size(), 1);
  EXPECT_EQ(model.left_out[0], "age bands");
}

TEST(WarmUpModel, UnknownSessionsCountAsTheOthersOfTheirWeek) {
  records::Season season = drawn(0.8, 3);
  for (std::size_t i = 0; i < season.exposures.size(); i += 3) season.exposures[i].warm_up.reset();
  const WarmUpModel model = model_of(season);
  EXPECT_EQ(model.rows_unknown, 0);
  EXPECT_EQ(model.rows, 16 * 30);
}

}  // namespace
}  // namespace lanework::findings
