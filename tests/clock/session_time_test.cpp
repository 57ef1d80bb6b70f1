// Whole sessions: the plan's arithmetic, changes of formation, late players, simulation, savings.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <fstream>
#include <iterator>
#include <numeric>
#include <string>

#include "core/clock/clock.h"
#include "core/clock/constants.h"
#include "core/clock/saving.h"
#include "core/clock/simulate.h"
#include "tests/clock/an_evening.h"

namespace lanework::clock {
namespace {

using catalogue::Formation;

session::Item item(int drill, int dose) {
  session::Item made{};
  made.drill = drill;
  made.rung = 0;
  made.dose = dose;
  return made;
}

// Laps, holds, holds, lowers, laps; a_catalogue() holds hold 0, laps 1, lowers 2.
session::Session a_session() {
  session::Session session;
  session.items = {item(1, 2), item(0, 1), item(0, 0), item(2, 1), item(1, 1)};
  return session;
}

TEST(FormationChange, WalksAndRegroups) {
  const session::Evening evening = an_evening();
  EXPECT_EQ(formation_change(Formation::kLane, Formation::kLane, evening).count, 0);
  // Half of 20 m at 1.25 m/s is 8 s; spread 4 + 14 * 0.25, lane 6 + 14 * 0.4, pairs 6 + 14 * 0.5 s.
  EXPECT_EQ(formation_change(Formation::kLane, Formation::kSpread, evening).count, 8000 + 7500);
  EXPECT_EQ(formation_change(Formation::kSpread, Formation::kLane, evening).count, 8000 + 11600);
  EXPECT_EQ(formation_change(Formation::kSpread, Formation::kPairs, evening).count, 13000);
  EXPECT_EQ(formation_change(Formation::kPairs, Formation::kSpread, evening).count, 7500);
}

TEST(FormationChange, GrowsWithTurnout) {
  EXPECT_TRUE(rc::check("never less with one more", [] {
    session::Evening evening = an_evening();
    evening.turnout = *rc::gen::inRange(2, 40);
    session::Evening more = evening;
    ++more.turnout;
    const auto from = static_cast<Formation>(*rc::gen::inRange(0, 3));
    const auto to = static_cast<Formation>(*rc::gen::inRange(0, 3));
    RC_ASSERT(formation_change(from, to, more) >= formation_change(from, to, evening));
    RC_ASSERT(gathering(more) >= gathering(evening));
  }));
}

TEST(Gathering, FitsLatePlayersInOnce) {
  session::Evening evening = an_evening();
  EXPECT_EQ(gathering(evening).count, 15000 + 14 * 500);
  evening.late = 4;
  EXPECT_EQ(players_at_first_drill(evening), 10);
  EXPECT_EQ(gathering(evening).count, 15000 + 10 * 500 + 10000 + 4 * 500);
  evening.late = 20;
  EXPECT_EQ(players_at_first_drill(evening), 1);
}

TEST(LayOut, AddsUpFromTheFirstCall) {
  session::Session session = a_session();
  lay_out(session, a_catalogue(), an_evening());
  // Gathering 22 s; laps 20 + 82 s; change 15.5 -> 16 s; ...
  EXPECT_EQ(session.items[0].change, Seconds(22));
  EXPECT_EQ(session.items[0].takes, Seconds(102));
  EXPECT_EQ(session.items[0].starts, Seconds(22));
  EXPECT_EQ(session.items[1].change, Seconds(16));
  EXPECT_EQ(session.items[1].starts, Seconds(140));
  EXPECT_EQ(session.items[2].change, Seconds(0));
  Seconds sum(0);
  for (const session::Item& each : session.items) sum += each.change + each.takes;
  EXPECT_EQ(session.planned, sum);
  EXPECT_EQ(session_time(session, a_catalogue(), an_evening(), 0).median, sum);
}

TEST(SessionTime, OfNothingIsNothing) {
  const SessionTime time = session_time({}, a_catalogue(), an_evening());
  EXPECT_EQ(time.median, Seconds(0));
  EXPECT_EQ(time.nine_in_ten, Seconds(0));
  EXPECT_EQ(time.moving_permille, 0);
  EXPECT_TRUE(time.best_saving.sentence.empty());
}

TEST(SessionTime, SameSeedSameTimesOtherSeedOthers) {
  const session::Session session = a_session();
  session::Evening evening = an_evening();
  const SessionTime once = session_time(session, a_catalogue(), evening, 500);
  const SessionTime again = session_time(session, a_catalogue(), evening, 500);
  EXPECT_EQ(once.simulated_median, again.simulated_median);
  EXPECT_EQ(once.nine_in_ten, again.nine_in_ten);
  const auto times = simulate_sessions(session, a_catalogue(), evening, 0, 20);
  evening.seed += 1;
  EXPECT_NE(times, simulate_sessions(session, a_catalogue(), evening, 0, 20));
}

TEST(SessionTime, RunsMayBeSharedOutInAnyWay) {
  const session::Session session = a_session();
  const session::Evening evening = an_evening();
  const auto whole = simulate_sessions(session, a_catalogue(), evening, 0, 60);
  auto parts = simulate_sessions(session, a_catalogue(), evening, 0, 17);
  const auto rest = simulate_sessions(session, a_catalogue(), evening, 17, 43);
  parts.insert(parts.end(), rest.begin(), rest.end());
  EXPECT_EQ(whole, parts);
}

TEST(SessionTime, MomentsAndSimulationAgree) {
  const session::Session session = a_session();
  const session::Evening evening = an_evening();
  const SessionTime time = session_time(session, a_catalogue(), evening, 4000);
  EXPECT_EQ(time.sessions_simulated, 4000);
  const SessionTime moments_only = session_time(session, a_catalogue(), evening, 0);
  EXPECT_NEAR(
      static_cast<double>(time.simulated_median.count) / static_cast<double>(moments_only.simulated_median.count), 1.0,
      0.02);
  EXPECT_NEAR(static_cast<double>(time.nine_in_ten.count) / static_cast<double>(moments_only.nine_in_ten.count), 1.0,
              0.03);
  EXPECT_GT(time.nine_in_ten, time.simulated_median);
  const auto times = simulate_sessions(session, a_catalogue(), evening, 0, 4000);
  const double mean = std::accumulate(times.begin(), times.end(), 0.0) / 4000;
  double squares = 0;
  for (const std::int64_t each : times)
    squares += (static_cast<double>(each) - mean) * (static_cast<double>(each) - mean);
  const double simulated = std::sqrt(squares / 3999) / 1000;
  const auto moments = static_cast<double>(moment_spread(time.lines).count);
  EXPECT_NEAR(simulated / moments, 1.0, 0.3);
}

TEST(SessionTime, MomentsAloneGiveAMargin) {
  const SessionTime time = session_time(a_session(), a_catalogue(), an_evening(), 0);
  EXPECT_EQ(time.sessions_simulated, 0);
  EXPECT_GT(time.simulated_median, time.median);  // the slowest hold up the file
  EXPECT_EQ(time.nine_in_ten, time.median + moment_margin(time.lines));
  EXPECT_GE(moment_margin(time.lines), moment_spread(time.lines));
}

TEST(SessionTime, LatePlayersShortenTheFirstDrillOnly) {
  session::Session laps;
  laps.items = {item(1, 2)};
  session::Evening evening = an_evening();
  const auto all = simulate_sessions(laps, a_catalogue(), evening, 0, 200);
  evening.late = 8;
  const auto few = simulate_sessions(laps, a_catalogue(), evening, 0, 200);
  // Files of three instead of seven save two gaps of eight a set, more than the 10 s of fitting in.
  EXPECT_LT(std::accumulate(few.begin(), few.end(), std::int64_t{0}),
            std::accumulate(all.begin(), all.end(), std::int64_t{0}));
}

TEST(SessionTime, MovingShareIsOfTheWholeSession) {
  session::Session hold;
  hold.items = {item(0, 1)};
  // 58 s of doing with 689 thousandths of work, 20 s told, 22 s gathered.
  EXPECT_EQ(session_time(hold, a_catalogue(), an_evening(), 0).moving_permille, 58 * 689 / 100);
}

TEST(Saving, SaysWhatAThirdLaneSaves) {
  session::Session session;
  session.items = {item(1, 2)};
  session::Evening evening = an_evening();
  evening.turnout = 24;  // files of 12, then 8
  evening.exposures["laps"].times = 100;
  const Saving saving = session_time(session, a_catalogue(), evening, 0).best_saving;
  // A set: 24 + 22 + 14.5 = 60.5 s with two lanes, 16 + 14 + 14.5 = 44.5 s with three.
  EXPECT_EQ(saving.saved, Seconds(32));
  EXPECT_EQ(saving.sentence, "a third lane saves 32 s");
}

TEST(Saving, RoomOrTellingOrAShorterLane) {
  session::Session session;
  session.items = {item(0, 0)};
  session::Evening evening = an_evening();
  evening.strip.area_width = Millimetres(6500);
  evening.strip.area_length = Millimetres(4000);
  EXPECT_EQ(best_saving(session, a_catalogue(), evening).sentence, "room for everybody at once saves 1 min 6 s");

  session.items = {item(0, 0), item(2, 0), item(0, 1)};
  EXPECT_EQ(best_saving(session, a_catalogue(), an_evening()).sentence,
            "telling each drill in half the time saves 30 s");

  session.items = {item(1, 2)};
  evening = an_evening();
  evening.strip.lanes = 12;
  evening.exposures["laps"].times = 100;
  EXPECT_EQ(best_saving(session, a_catalogue(), evening).sentence,
            "a lane of 10 m instead of 15 m saves 18 s, with less running");
}

TEST(Saving, IsSilentWhenNothingHelps) {
  session::Session session;
  session.items = {item(0, 0)};
  session::Evening evening = an_evening();
  EXPECT_TRUE(best_saving(session, a_catalogue(), evening).sentence.empty());
  EXPECT_EQ(duration_in_words(Seconds(130)), "2 min 10 s");
  EXPECT_EQ(duration_in_words(Seconds(120)), "2 min");
  EXPECT_EQ(duration_in_words(Seconds(45)), "45 s");
}

TEST(Constants, EachHasASource) {
  std::ifstream in(LANEWORK_SOURCE_DIR "/catalogue/sources.toml", std::ios::binary);
  const std::string sources((std::istreambuf_iterator<char>(in)), std::istreambuf_iterator<char>());
  const auto rows = constant_rows();
  EXPECT_GE(rows.size(), 25U);
  for (const ConstantRow& row : rows) {
    EXPECT_NE(sources.find("key = \"" + row.source + "\""), std::string::npos) << row.name;
    EXPECT_FALSE(row.why.empty()) << row.name;
  }
}

}  // namespace
}  // namespace lanework::clock
