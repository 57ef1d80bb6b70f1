// How often the limits of each method hold the truth: simulated clubs of 24 squads of 12 to 20 players, a season of 30
// weeks, 4 injuries in 1000 h, squads' true rates 30 % apart, three warm-ups a week taking the rate down by a third.
// 2,000 clubs in './test --long', 100 otherwise; the table is printed as a note of the test.
#include <gtest/gtest.h>

#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <boost/random/uniform_01.hpp>
#include <cmath>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

#include "core/evidence/agreement_limits.h"
#include "core/evidence/clustered_ratio.h"
#include "core/evidence/gamma_poisson.h"
#include "core/evidence/mean_difference.h"
#include "core/evidence/mixed/nb2_fit.h"
#include "core/evidence/mixed/poisson_fit.h"
#include "core/evidence/normal.h"
#include "core/evidence/poisson_limits.h"
#include "core/evidence/random_engine.h"
#include "core/evidence/rate_ratio.h"
#include "core/evidence/reliability.h"
#include "core/evidence/shrunken_rates.h"
#include "core/evidence/standardised.h"
#include "core/evidence/stratified.h"

namespace lanework::evidence {
namespace {

constexpr double kLevel = 0.95;
constexpr double kRate = 0.004;
constexpr double kEffect = -0.135;  // of one warm-up a week on the log rate: three take a third off
constexpr std::size_t kSquads = 24;
constexpr std::size_t kWeeks = 30;

std::uint32_t clubs_to_play() {
  const char* asked = std::getenv("LANEWORK_SIMULATED_CLUBS");
  return asked != nullptr ? static_cast<std::uint32_t>(std::stoul(asked)) : 100;
}

bool holds(const Interval& limits, double truth) { return limits.low <= truth && truth <= limits.high; }

// Shares of intervals that held, method by method, against a share that is wanted.
class Tally {
 public:
  void add(const std::string& method, bool held) {
    Row& row = row_of(method);
    ++row.times;
    row.held += held ? 1 : 0;
  }

  // exact: at least the level; else within two points of it. Chance of the play is allowed for: three standard errors.
  void expect(const std::string& method, bool exact) {
    const Row& row = row_of(method);
    const double share = row.held / row.times;
    const double chance = 3 * std::sqrt(kLevel * (1 - kLevel) / row.times);
    const double slack = row.times >= 2000 ? 0 : chance;
    EXPECT_GE(share, (exact ? kLevel - chance : 0.93 - slack)) << method;
    if (!exact) {
      EXPECT_LE(share, 0.97 + slack) << method;
    }
    tell(method);
  }

  void expect_least(const std::string& method, double least) {
    const Row& row = row_of(method);
    EXPECT_GE(row.held / row.times, least - (row.times >= 2000 ? 0 : 3 * std::sqrt(least * (1 - least) / row.times)))
        << method;
    tell(method);
  }

  // Without an aim.
  void tell(const std::string& method) {
    const Row& row = row_of(method);
    char text[160];
    std::snprintf(text, sizeof text, "%s%s %.1f %%", table_.empty() ? "" : ", ", method.c_str(),
                  100 * row.held / row.times);
    table_ += text;
  }

  [[nodiscard]] const std::string& table() const { return table_; }

 private:
  struct Row {
    std::string method;
    double times = 0;
    double held = 0;
  };
  std::vector<Row> rows_;
  std::string table_;

  Row& row_of(const std::string& method) {
    for (Row& row : rows_)
      if (row.method == method) return row;
    rows_.push_back({method});
    return rows_.back();
  }
};

struct PlayedClub {
  std::vector<double> rates;    // by squad, true, without warm-ups
  std::vector<Exposed> season;  // by squad, at those rates
  std::vector<Exposed> warmed;  // the same squads' other season, two thirds of the rate
  Frame weeks;                  // warm-ups vary from squad to squad and week to week
  Frame uneven_weeks;           // the same with counts that vary more than a Poisson's
};

std::int64_t poisson(double mean, RandomEngine& engine) {
  return boost::random::poisson_distribution<std::int64_t, double>(mean)(engine);
}

// A gamma draw of mean 1 whose variance is one by the shape, a whole number: a sum of exponentials.
double gamma_of_mean_one(int shape, RandomEngine& engine) {
  double sum = 0;
  for (int i = 0; i < shape; ++i) sum -= std::log(uniform_from(engine()));
  return sum / shape;
}

PlayedClub play(std::uint32_t club) {
  RandomEngine engine(20261126, 3, 0, club);
  boost::random::normal_distribution<double> effect(0, 0.3);
  PlayedClub out;
  out.weeks.names = out.uneven_weeks.names = {"intercept", "warm-ups"};
  for (std::size_t squad = 0; squad < kSquads; ++squad) {
    out.rates.push_back(kRate * std::exp(effect(engine)));
    const double players = 12 + 8 * uniform_from(engine());
    const double usual_warm_ups = 3 * uniform_from(engine());
    double hours = 0;
    for (std::size_t week = 0; week < kWeeks; ++week) {
      const double own = players * (3 + 2 * uniform_from(engine()));
      const double warm_ups = std::round(std::min(3.0, usual_warm_ups + uniform_from(engine())));
      const double mean = out.rates.back() * own * std::exp(kEffect * warm_ups);
      hours += own;
      for (Frame* frame : {&out.weeks, &out.uneven_weeks}) {
        frame->design.insert(frame->design.end(), {1, warm_ups});
        frame->log_hours.push_back(std::log(own));
      }
      out.weeks.events.push_back(static_cast<double>(poisson(mean, engine)));
      out.uneven_weeks.events.push_back(static_cast<double>(poisson(mean * gamma_of_mean_one(1, engine), engine)));
    }
    out.weeks.squad_ends.push_back(out.weeks.rows());
    out.uneven_weeks.squad_ends.push_back(out.uneven_weeks.rows());
    out.season.push_back({poisson(out.rates.back() * hours, engine), hours});
    out.warmed.push_back({poisson(out.rates.back() * hours * 2 / 3, engine), hours});
  }
  return out;
}

Exposed sum_of(const std::vector<Exposed>& squads) {
  Exposed sum;
  for (const Exposed& squad : squads) sum = {sum.events + squad.events, sum.hours + squad.hours};
  return sum;
}

// True events of a season by its hours.
double true_rate(const PlayedClub& club) {
  double events = 0;
  double hours = 0;
  for (std::size_t s = 0; s < kSquads; ++s) {
    events += club.rates[s] * club.season[s].hours;
    hours += club.season[s].hours;
  }
  return events / hours;
}

TEST(Coverage, OfRates) {
  Tally tally;
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    const PlayedClub club = play(run);
    const Exposed all = sum_of(club.season);
    const double mean = true_rate(club) * all.hours;
    tally.add("exact, club", holds(exact_limits(all.events, kLevel), mean));
    tally.add("mid-P, club", holds(mid_p_limits(all.events, kLevel), mean));
    double standard_truth = 0;
    std::vector<StandardPart> parts;
    for (std::size_t s = 0; s < kSquads; ++s) {
      const double own = club.rates[s] * club.season[s].hours;
      tally.add("exact, squad", holds(exact_limits(club.season[s].events, kLevel), own));
      tally.add("mid-P, squad", holds(mid_p_limits(club.season[s].events, kLevel), own));
      parts.push_back({club.season[s].events, club.season[s].hours, 1.0 + static_cast<double>(s % 4)});
      standard_truth += club.rates[s] * parts.back().standard_hours / 60;
    }
    tally.add("standardised", holds(standardised_rate(parts, kLevel).limits, standard_truth));
    std::vector<SquadCount> counts;
    for (const Exposed& squad : club.season) counts.push_back({squad.events, squad.hours});
    const std::vector<Shrunken> shrunken = shrunken_rates(counts, kLevel);
    const std::vector<Shrunken> plugged_in = shrink(counts, fit_gamma_prior(counts), kLevel);
    for (std::size_t s = 0; s < kSquads; ++s) {
      tally.add("shrunken", holds(shrunken[s].limits, club.rates[s]));
      tally.add("shrunken, gamma taken as known", holds(plugged_in[s].limits, club.rates[s]));
    }
  }
  tally.expect("exact, club", true);
  tally.expect("mid-P, club", false);
  tally.expect("exact, squad", true);
  tally.expect("mid-P, squad", false);
  tally.expect("standardised", true);
  tally.expect("shrunken", false);
  tally.tell("shrunken, gamma taken as known");
  RecordProperty("note", tally.table());
}

TEST(Coverage, OfComparisons) {
  Tally tally;
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    const PlayedClub club = play(run);
    const Exposed before = sum_of(club.season);
    const Exposed after = sum_of(club.warmed);
    const double ratio = 2.0 / 3;
    tally.add("ratio exact", holds(exact_ratio(after, before, kLevel).limits, ratio));
    tally.add("ratio mid-P", holds(mid_p_ratio(after, before, kLevel).limits, ratio));
    tally.add("ratio log scale", holds(log_wald_ratio(after, before, kLevel).limits, ratio));
    tally.add("difference", holds(rate_difference(after, before, kLevel).limits, -true_rate(club) / 3));
    std::vector<Stratum> strata;
    for (std::size_t s = 0; s < kSquads; ++s) strata.push_back({club.warmed[s], club.season[s]});
    tally.add("Mantel-Haenszel", holds(mantel_haenszel_ratio(strata, kLevel).limits, ratio));
    // Half of the squads warm up, the other half does not: squads differ, and count as squads.
    const std::size_t half = kSquads / 2;
    const std::vector<Exposed> one(club.warmed.begin(), club.warmed.begin() + half);
    const std::vector<Exposed> other(club.season.begin() + half, club.season.end());
    tally.add("arms of squads", holds(clustered_ratio(one, other, kLevel).tested.limits, ratio));
  }
  tally.expect("ratio exact", true);
  for (const char* method : {"ratio mid-P", "ratio log scale", "difference", "Mantel-Haenszel", "arms of squads"})
    tally.expect(method, false);
  RecordProperty("note", tally.table());
}

TEST(Coverage, OfModels) {
  Tally tally;
  const double reach = reach_of(kLevel);
  const auto around = [&](double estimate, double error) {
    return Interval{estimate - reach * error, estimate + reach * error};
  };
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    const PlayedClub club = play(run);
    const PoissonFit laplace = fit_poisson(club.weeks, 1);
    tally.add("Poisson, Laplace", holds(around(laplace.coefficients[1], laplace.judged.error(1)), kEffect));
    const PoissonFit points = fit_poisson(club.weeks, 9);
    tally.add("Poisson, 9 points", holds(around(points.coefficients[1], points.judged.error(1)), kEffect));
    const Nb2Fit nb2 = fit_nb2(club.uneven_weeks);
    tally.add("NB2", holds(around(nb2.coefficients[1], nb2.judged.error(1)), kEffect));
  }
  for (const char* method : {"Poisson, Laplace", "Poisson, 9 points", "NB2"}) tally.expect(method, false);
  RecordProperty("note", tally.table());
}

// Twelve players scored by three observers: players 2 apart, observers 1, error 1.
TEST(Coverage, OfAgreement) {
  Tally tally;
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    RandomEngine engine(20261126, 4, 0, run);
    boost::random::normal_distribution<double> normal(0, 1);
    std::vector<double> observers;
    for (int rater = 0; rater < 3; ++rater) observers.push_back(normal(engine));
    Scores scores;
    for (int player = 0; player < 12; ++player) {
      const double own = 2 * normal(engine);
      scores.emplace_back();
      for (const double observer : observers) scores.back().push_back(own + observer + normal(engine));
    }
    const Correlations found = intraclass_correlations(scores, kLevel);
    tally.add("agreement (2,1)", holds(agreement_limits(found.mean_squares, 12, 3, kLevel), 4.0 / 6));
    tally.add("(2,1) by Satterthwaite", holds(found.one_agreement.limits, 4.0 / 6));
    tally.add("consistency (3,1)", holds(found.one_consistency.limits, 4.0 / 5));
  }
  // Shrout and Fleiss' approximation is short with few raters: 91.7 % of 2,000 here. Readers are given the other.
  tally.expect("agreement (2,1)", false);
  tally.expect("consistency (3,1)", false);
  RecordProperty("note", tally.table());
}

// Two observers put 60 players into three classes: half the time both see what is there, else each guesses.
TEST(Coverage, OfKappa) {
  Tally tally;
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    RandomEngine engine(20261126, 5, 0, run);
    boost::random::uniform_01<double> share;
    const auto guess = [&] { return static_cast<std::size_t>(3 * share(engine)); };
    Classed counts(3, std::vector<double>(3, 0));
    for (int player = 0; player < 60; ++player) {
      const std::size_t there = guess();
      const bool seen = share(engine) < 0.5;
      const std::size_t first = seen ? there : guess();
      const std::size_t second = seen ? there : guess();
      ++counts[first][second];
    }
    // What is seen agrees, guesses agree as often as by chance: half of what can be had above chance.
    tally.add("kappa", holds(kappa(counts, only_equal(3), kLevel).limits, 0.5));
    tally.add("kappa, linear weights", holds(kappa(counts, linear_weights(3), kLevel).limits, 0.5));
  }
  for (const char* method : {"kappa", "kappa, linear weights"}) tally.expect(method, false);
  RecordProperty("note", tally.table());
}

// Warm-ups a week of 14 squads whose coach was taught and of 10 whose was not, the taught ones twice as uneven.
TEST(Coverage, OfMeansOfSquads) {
  Tally tally;
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    RandomEngine engine(20261126, 6, 0, run);
    boost::random::normal_distribution<double> normal(0, 1);
    std::vector<double> taught;
    std::vector<double> others;
    std::vector<double> moved;
    for (int squad = 0; squad < 14; ++squad) taught.push_back(1.6 + 0.8 * normal(engine));
    for (int squad = 0; squad < 10; ++squad) others.push_back(1.2 + 0.4 * normal(engine));
    for (int squad = 0; squad < 10; ++squad) moved.push_back(0.3 + 0.5 * normal(engine));
    tally.add("Welch", holds(welch_difference(taught, others, kLevel)->limits, 0.4));
    tally.add("pairs", holds(paired_difference(moved, kLevel)->limits, 0.3));
  }
  for (const char* method : {"Welch", "pairs"}) tally.expect(method, false);
  RecordProperty("note", tally.table());
}

}  // namespace
}  // namespace lanework::evidence
