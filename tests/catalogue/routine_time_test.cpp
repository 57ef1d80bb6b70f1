// A house routine fits the slot it is written for: 16 players who know it, two lines on a lane of 15 m.
#include <gtest/gtest.h>

#include "core/clock/clock.h"
#include "tests/catalogue/shipped.h"

namespace lanework::catalogue::test {
namespace {

constexpr Seconds kRoomForSpread{120};  // about what separates nine nights in ten from the median

session::Evening usual_evening(const Routine& routine, int turnout) {
  session::Evening evening;
  evening.turnout = turnout;
  evening.age = routine.age_from;
  evening.slot = Seconds(routine.minutes * 60);
  evening.strip.lane_length = Millimetres(15'000);
  evening.strip.cone_spacing = Millimetres(5'000);
  evening.strip.lanes = 2;
  evening.strip.lane_gap = Millimetres(3'000);
  evening.strip.area_width = Millimetres(20'000);
  evening.strip.area_length = Millimetres(15'000);
  evening.strip.soft_ground = true;
  return evening;
}

class RoutineTime : public testing::TestWithParam<const char*> {};

clock::SessionTime time_of(const Routine& routine, session::Evening evening) {
  const Catalogue& catalogue = shipped_catalogue();
  session::Session session;
  for (const RoutineLine& line : routine.lines) {
    session.items.push_back({line.drill, line.rung, line.dose});
    evening.exposures[catalogue.drills[static_cast<std::size_t>(line.drill)].id].times = 8;
  }
  return clock::session_time(session, catalogue, evening, 500);
}

TEST_P(RoutineTime, FitsItsSlotAndFillsMostOfIt) {
  const std::string file = GetParam() + std::string(".toml");
  const Result<Routine> routine = read_routine(read_toml(shipped_folder() / "routines" / file), shipped_catalogue());
  ASSERT_TRUE(routine.ok()) << all_lines(routine.faults());
  const session::Evening evening = usual_evening(routine.value(), 16);
  const clock::SessionTime time = time_of(routine.value(), evening);
  EXPECT_LE(time.median + kRoomForSpread, evening.slot);
  EXPECT_LE(time.nine_in_ten, evening.slot);
  EXPECT_GE(time.median * 4, evening.slot * 3);
  // One player fewer makes a trio, which takes three turns where pairs take two.
  EXPECT_LE(time_of(routine.value(), usual_evening(routine.value(), 15)).nine_in_ten, evening.slot);
}

INSTANTIATE_TEST_SUITE_P(Shipped, RoutineTime,
                         testing::Values("first-steps", "early-teens", "mid-teens", "older", "match-day", "hall",
                                         "long-practice"));

}  // namespace
}  // namespace lanework::catalogue::test
