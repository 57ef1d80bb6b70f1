// Times of the trade: common practice, no published source.
#include <gtest/gtest.h>

#include "core/clock/clock.h"
#include "core/session/strip.h"
#include "tests/catalogue/shipped.h"
#include "tests/clock/an_evening.h"

namespace lanework::clock {
namespace {

// 25 m out at 2.5 m/s, jog back at 2.2 m/s, 18 players sent off two at a time with 3 s between: nine waves,
// 8 * 3 + 10.0 + 11.36 = 45.4 s until everybody has done one lap. Common practice.
TEST(CommonPractice, OneLapOfEighteenPlayers) {
  catalogue::Catalogue catalogue;
  catalogue.gaits = {steady_gait("out", 2500), steady_gait("back", 2200)};
  catalogue::Drill lap = a_lane_drill("lap");
  lap.lane.out_gait = "out";
  lap.lane.back_gait = "back";
  lap.lane.turn = Milliseconds(0);
  lap.lane.release_gap = Milliseconds(3000);
  session::Evening evening = an_evening();
  evening.turnout = 18;
  evening.strip.lane_length = Millimetres(25000);
  EXPECT_EQ(drill_time(catalogue, lap, 0, 0, evening).doing.count, 45364);
}

// A long routine of some twenty drills over all families with common doses, 16 players in two lines on a 15 m
// lane, known to the squad: 20 to 35 minutes. Common practice.
TEST(CommonPractice, ALongRoutineTakesTwentyToThirtyFiveMinutes) {
  const catalogue::Catalogue& catalogue = catalogue::test::shipped_catalogue();
  const Document document =
      catalogue::test::read_toml(catalogue::test::shipped_folder() / "routines" / "long-practice.toml");
  const Result<catalogue::Routine> routine = catalogue::read_routine(document, catalogue);
  ASSERT_TRUE(routine.ok()) << catalogue::test::all_lines(routine.faults());
  EXPECT_GE(routine.value().lines.size(), 18U);
  session::Evening evening = an_evening();
  evening.turnout = 16;
  evening.age = 13;
  session::Session session;
  for (const catalogue::RoutineLine& line : routine.value().lines) {
    session.items.push_back({line.drill, line.rung, line.dose});
    evening.exposures[catalogue.drills[static_cast<std::size_t>(line.drill)].id].times = 8;
  }
  const SessionTime time = session_time(session, catalogue, evening, 500);
  EXPECT_GE(time.median, Seconds(20 * 60));
  EXPECT_LE(time.median, Seconds(35 * 60));
  EXPECT_GE(time.simulated_median, Seconds(20 * 60));
  EXPECT_LE(time.nine_in_ten, Seconds(35 * 60));
}

// Four cones a line, two lines as the smallest set-up: 15 m with a cone every 5 m. Common practice.
TEST(CommonPractice, FourConesALine) { EXPECT_EQ(session::cones_a_line(an_evening().strip), 4); }

}  // namespace
}  // namespace lanework::clock
