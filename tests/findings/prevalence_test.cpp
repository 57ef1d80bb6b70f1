// Who is out on a day; and how often the limits hold in clubs played with players' injuries of skewed lengths: 2,000
// clubs in './test --long', 100 otherwise.
#include "core/findings/prevalence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <boost/random/normal_distribution.hpp>
#include <boost/random/poisson_distribution.hpp>
#include <cmath>
#include <cstdlib>

#include "core/evidence/random_engine.h"
#include "tests/findings/small_season.h"

namespace lanework::findings {
namespace {

using records::InjuryRecord;
using records::PlayerRecord;
using records::Season;

InjuryRecord of_player(const std::string& player, std::uint32_t squad, Date on, std::optional<Date> returned) {
  InjuryRecord out = injury(squad, on, returned);
  out.player = player;
  return out;
}

// 28 days from Monday 2 March; two squads of two players each.
Season four_players() {
  Season season;
  season.period = {day(3, 2), day(3, 29), day(3, 29)};
  season.squads = {squad("a", "", "U13"), squad("b", "", "U13")};
  season.players = {{"p1", 0, {}, {}}, {"p2", 0, {}, {}}, {"p3", 1, {}, {}}, {"p4", 1, {}, {}}};
  return season;
}

TEST(Prevalence, CountsTheDaysThatCount) {
  Season season = four_players();
  // Neither the day it happened nor that of return: 4 to 7 March.
  season.injuries = {of_player("p1", 0, day(3, 3), day(3, 8)), of_player("p3", 1, day(3, 27), std::nullopt)};
  const auto found = prevalence(season, 0.95);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->season.days_out, 4 + 2);
  EXPECT_EQ(found->season.days_on_books, 4 * 28);
  EXPECT_EQ(found->players, 4);
  EXPECT_EQ(found->players_out, 2);
  EXPECT_TRUE(found->listed);
  EXPECT_FALSE(found->by_squads);
  ASSERT_EQ(found->weeks.size(), 4);
  EXPECT_EQ(found->weeks[0].days_out, 4);
  EXPECT_EQ(found->weeks[1].days_out, 0);
  EXPECT_EQ(found->weeks[3].days_out, 2);
  EXPECT_EQ(found->weeks[3].from, day(3, 23));
  ASSERT_EQ(found->months.size(), 1);
}

TEST(Prevalence, APlayerOutTwiceIsOutOnce) {
  Season season = four_players();
  season.injuries = {of_player("p1", 0, day(3, 3), day(3, 8)), of_player("p1", 0, day(3, 5), day(3, 11))};
  EXPECT_EQ(prevalence(season, 0.95)->season.days_out, 7);
  EXPECT_EQ(prevalence(season, 0.95)->players_out, 1);
}

TEST(Prevalence, JoiningAndLeaving) {
  Season season = four_players();
  season.players[0].joined = day(3, 6);
  season.players[1].left = day(3, 15);
  season.injuries = {of_player("p1", 0, day(3, 3), day(3, 8)), of_player("nobody", 0, day(3, 3), day(3, 8)),
                     of_player("", 0, day(3, 3), day(3, 8))};
  const auto found = prevalence(season, 0.95);
  EXPECT_EQ(found->season.days_on_books, 2 * 28 + 24 + 14);
  EXPECT_EQ(found->season.days_out, 2);
  EXPECT_EQ(found->injuries_left_out, 2);
}

TEST(Prevalence, WithoutAListTheSquadsNumbersStandIn) {
  Season season = four_players();
  season.players.clear();
  season.squads[0].players = 10;
  season.injuries = {of_player("p1", 0, day(3, 3), day(3, 8)), of_player("", 0, day(3, 3), day(3, 8)),
                     of_player("p3", 1, day(3, 3), day(3, 8))};
  const auto found = prevalence(season, 0.95);
  EXPECT_FALSE(found->listed);
  EXPECT_EQ(found->season.days_on_books, 280);
  EXPECT_EQ(found->season.days_out, 8);
  EXPECT_EQ(found->injuries_left_out, 1);  // of a squad whose number nobody knows
  EXPECT_FALSE(found->season.limits);
  season.squads[0].players.reset();
  EXPECT_FALSE(prevalence(season, 0.95));
}

TEST(Prevalence, ProblemsThatComeAndGo) {
  Season season = four_players();
  season.injuries = {of_player("p1", 0, day(3, 3), day(3, 20))};
  season.injuries[0].days_missed = {day(3, 4), day(3, 9)};
  EXPECT_EQ(prevalence(season, 0.95)->season.days_out, 2);
}

TEST(Prevalence, NobodyOutHasNoLimits) {
  const auto found = prevalence(four_players(), 0.95);
  EXPECT_EQ(found->season.days_out, 0);
  EXPECT_FALSE(found->season.limits);
}

// One injury a player, all over by the end: days out are the days lost.
RC_GTEST_PROP(Prevalence, DaysOutAreDaysLost, ()) {
  Season season = four_players();
  std::int64_t lost = 0;
  for (std::size_t player = 0; player < season.players.size(); ++player) {
    const int begins = *rc::gen::inRange(0, 14);
    const int out = *rc::gen::inRange(0, 14);
    const Date on{season.period.first.days_since_epoch + begins};
    const PlayerRecord& who = season.players[player];
    season.injuries.push_back(of_player(who.player, who.squad, on, Date{on.days_since_epoch + out}));
    lost += records::time_loss(season.injuries.back(), season.period.as_of).days;
  }
  const auto found = prevalence(season, 0.95);
  RC_ASSERT(found->season.days_out == lost);
  std::int64_t by_week = 0;
  for (const ShareOut& week : found->weeks) by_week += week.days_out;
  RC_ASSERT(by_week == lost);
  RC_ASSERT(!found->season.limits || (found->season.limits->low <= found->season.share() &&
                                      found->season.share() <= found->season.limits->high));
}

std::uint32_t clubs_to_play() {
  const char* asked = std::getenv("LANEWORK_SIMULATED_CLUBS");
  return asked != nullptr ? static_cast<std::uint32_t>(std::stoul(asked)) : 100;
}

// Squads of 12 to 20 players over 40 weeks, 0.6 injuries a player's season, squads 35 % apart; half of the injuries
// cost a week or less, few are very long.
Season played(std::uint32_t run, std::uint32_t squads) {
  evidence::RandomEngine engine(20261126, 7, squads, run);
  boost::random::normal_distribution<double> normal(0, 1);
  Season season;
  const Date first = day(1, 5);
  const Date last{first.days_since_epoch + 279};
  season.period = {first, last, last};
  for (std::uint32_t number = 0; number < squads; ++number) {
    const std::string id = "s" + std::to_string(number);
    season.squads.push_back(squad(id, "", "U13"));
    const double mean = 0.6 * std::exp(0.35 * normal(engine));
    const int players = 12 + static_cast<int>(9 * uniform_from(engine()));
    for (int player = 0; player < players; ++player) {
      const std::string name = id + "-" + std::to_string(player);
      season.players.push_back({name, number, {}, {}});
      const int injuries = boost::random::poisson_distribution<int, double>(mean)(engine);
      for (int n = 0; n < injuries; ++n) {
        const Date on{first.days_since_epoch + static_cast<int>(280 * uniform_from(engine()))};
        const int out = 1 + static_cast<int>(std::exp(1.9 + 1.1 * normal(engine)));
        season.injuries.push_back(of_player(name, number, on, Date{on.days_since_epoch + out}));
      }
    }
  }
  return season;
}

double share_held(std::uint32_t squads) {
  std::vector<Prevalence> clubs;
  double out = 0;
  double on_books = 0;
  for (std::uint32_t run = 0; run < clubs_to_play(); ++run) {
    clubs.push_back(*prevalence(played(run, squads), 0.95));
    out += static_cast<double>(clubs.back().season.days_out);
    on_books += static_cast<double>(clubs.back().season.days_on_books);
  }
  double held = 0;
  for (const Prevalence& club : clubs)
    held +=
        club.season.limits && club.season.limits->low <= out / on_books && out / on_books <= club.season.limits->high
            ? 1
            : 0;
  return held / static_cast<double>(clubs.size());
}

TEST(Prevalence, LimitsHoldTheTruth) {
  const double chance = 3 * std::sqrt(0.95 * 0.05 / clubs_to_play());
  const double many = share_held(24);
  const double six = share_held(6);
  const double few = share_held(4);
  EXPECT_GE(many, 0.93 - chance);
  EXPECT_GE(six, 0.91 - chance);
  EXPECT_GE(few, 0.85 - chance);
  char text[120];
  std::snprintf(text, sizeof text, "24 squads %.1f %%, 6 squads %.1f %%, 4 squads by players %.1f %%", 100 * many,
                100 * six, 100 * few);
  RecordProperty("note", text);
}

}  // namespace
}  // namespace lanework::findings
