// Drill times worked out by hand from docs/model/clock.md.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/clock/clock.h"
#include "core/clock/drill_work.h"
#include "core/clock/telling.h"
#include "tests/clock/an_evening.h"

namespace lanework::clock {
namespace {

std::int64_t doing(const catalogue::Drill& drill, int dose, const session::Evening& evening) {
  return drill_time(a_catalogue(), drill, 0, dose, evening).doing.count;
}

TEST(LaneDrill, OutAndBackByHand) {
  // 15 m at 2.5 is 6 s, turn 1 s, back at 2.0 is 7.5 s: loop 14.5 s. Seven in a file, 2 s apart: 12 + 14.5.
  EXPECT_EQ(doing(a_lane_drill(), 0, an_evening()), 26500);
  // Two passes: + max(14, 14.5). Two sets of two passes, no rest: twice that.
  EXPECT_EQ(doing(a_lane_drill(), 1, an_evening()), 41000);
  EXPECT_EQ(doing(a_lane_drill(), 2, an_evening()), 82000);
}

TEST(LaneDrill, TheLongestFileDecides) {
  session::Evening evening = an_evening();
  evening.turnout = 13;  // 7 and 6
  EXPECT_EQ(doing(a_lane_drill(), 0, evening), 26500);
  evening.strip.lanes = 12;  // 2 and eleven times 1
  EXPECT_EQ(doing(a_lane_drill(), 0, evening), 16500);
  EXPECT_EQ(file_players(13, 2, 0), 7);
  EXPECT_EQ(file_players(13, 2, 1), 6);
  EXPECT_EQ(file_players(3, 5, 3), 0);
}

TEST(LaneDrill, HeldStopsAtEveryConePassed) {
  catalogue::Drill drill = a_lane_drill();
  drill.lane.stops_at_cones = true;
  drill.lane.stop = Milliseconds(3000);
  // Cones at 0, 5, 10, 15 m: three stops of 3 s; a cone is free again after 3 s, so the gap is 3 s: 18 + 23.5.
  EXPECT_EQ(doing(drill, 0, an_evening()), 41500);
}

TEST(LaneDrill, RunsLoseTheirStartUp) {
  catalogue::Drill drill = a_lane_drill();
  drill.lane.out_gait = "run";
  drill.lane.out_share_of_top_speed = 50;
  // 15 m at 3 m/s is 5 s and 1 s to get going: loop 6 + 1 + 7.5; 12 + 14.5.
  EXPECT_EQ(doing(drill, 0, an_evening()), 26500);
  drill.lane.stops_at_cones = true;  // three stops, each a new start: loop 5 + 4 + 3 * 0 + 1 + 7.5
  EXPECT_EQ(doing(drill, 0, an_evening()), 29500);
}

TEST(LaneDrill, OneWayGathersAndFacingHalvesTheFile) {
  catalogue::Drill drill = a_lane_drill();
  drill.lane.shape = catalogue::LaneShape::kOneWay;  // loop 7 s; each pass 12 + 7
  EXPECT_EQ(doing(drill, 0, an_evening()), 19000);
  EXPECT_EQ(doing(drill, 1, an_evening()), 38000);
  drill.lane.shape = catalogue::LaneShape::kFacing;  // four in the longer half: 6 + 7, then + max(8, 7)
  EXPECT_EQ(doing(drill, 0, an_evening()), 13000);
  EXPECT_EQ(doing(drill, 1, an_evening()), 21000);
}

TEST(LaneDrill, SidesDoubleThePasses) {
  catalogue::Drill drill = a_lane_drill();
  drill.dose.sides = true;
  drill.dose.side_change = Milliseconds(4000);
  drill.dose.rest = Milliseconds(10000);
  EXPECT_EQ(doing(drill, 0, an_evening()), 41000 + 4000);
  EXPECT_EQ(doing(drill, 2, an_evening()), 2 * (26500 + 3 * 14500 + 4000) + 10000);
}

TEST(LaneDrill, MovesWhileRunningWaitsInTheFile) {
  const DrillTime time = drill_time(a_catalogue(), a_lane_drill(), 0, 1, an_evening());
  EXPECT_EQ(time.moving_permille, 1000 * 2 * 14500 / 41000);
}

TEST(LaneDrill, TheSlowestHoldsUpTheFile) {
  // Spread 0.1: the slowest loop is 14.5 * 1.16 = 16.82 s. One pass: half of 2.32 s. Two: also from
  // max(14, 14.5) to 16.82 s. Two sets: twice that. Nothing of the kind on the spot.
  const catalogue::Catalogue catalogue = a_catalogue();
  EXPECT_EQ(drill_time(catalogue, a_lane_drill(), 0, 0, an_evening()).hold_up.count, 1160);
  EXPECT_EQ(drill_time(catalogue, a_lane_drill(), 0, 1, an_evening()).hold_up.count, 1160 + 2320);
  EXPECT_EQ(drill_time(catalogue, a_lane_drill(), 0, 2, an_evening()).hold_up.count, 2 * (1160 + 2320));
  EXPECT_EQ(drill_time(catalogue, a_hold(), 0, 1, an_evening()).hold_up.count, 0);
}

TEST(LaneDrill, MonotoneInTurnoutAndLength) {
  EXPECT_TRUE(rc::check("more players or a longer lane never take less", [] {
    session::Evening evening = an_evening();
    evening.turnout = *rc::gen::inRange(2, 40);
    evening.strip.lanes = *rc::gen::inRange(1, 13);
    evening.strip.lane_length = Millimetres(*rc::gen::inRange(5000, 55000));
    catalogue::Drill drill = a_lane_drill();
    drill.lane.shape = *rc::gen::element(catalogue::LaneShape::kOutAndBack, catalogue::LaneShape::kOneWay,
                                         catalogue::LaneShape::kFacing);
    drill.lane.stops_at_cones = *rc::gen::arbitrary<bool>();
    drill.lane.stop = Milliseconds(2500);
    session::Evening more = evening;
    more.turnout += *rc::gen::inRange(0, 2);
    more.strip.lane_length += Millimetres(*rc::gen::inRange(0, 5000));
    const int dose = *rc::gen::inRange(0, 2);
    RC_ASSERT(doing(drill, dose, more) >= doing(drill, dose, evening));
    RC_ASSERT(doing(drill, dose + 1, evening) >= doing(drill, dose, evening));
  }));
}

TEST(SpreadDrill, SetsSidesRests) {
  // A set: 10 + 5 + 10 s; two with 8 s between: 58 s. 20 m x 15 m holds 10 x 7 of 2 m x 2 m.
  EXPECT_EQ(doing(a_hold(), 0, an_evening()), 25000);
  EXPECT_EQ(doing(a_hold(), 1, an_evening()), 58000);
  EXPECT_EQ(drill_time(a_catalogue(), a_hold(), 0, 1, an_evening()).moving_permille, 1000 * 40 / 58);
}

TEST(SpreadDrill, GoesInWavesWhereTheAreaIsSmall) {
  session::Evening evening = an_evening();
  evening.strip.area_width = Millimetres(6500);
  evening.strip.area_length = Millimetres(4000);  // 3 x 2 = 6 places: 14 players go in three waves
  const DrillTime time = drill_time(a_catalogue(), a_hold(), 0, 0, evening);
  EXPECT_EQ(time.waves, 3);
  EXPECT_EQ(time.doing.count, 3 * 25000 + 2 * 8000);
  evening.strip.area_length = Millimetres(1500);  // not even one: one after the other
  EXPECT_EQ(drill_time(a_catalogue(), a_hold(), 0, 0, evening).waves, 14);
}

TEST(SpreadDrill, TriesBothWaysRound) {
  catalogue::Drill drill = a_hold();
  drill.space_width = Millimetres(3000);
  drill.space_length = Millimetres(1000);
  session::Evening evening = an_evening();
  evening.strip.area_width = Millimetres(5000);   // 3 m wide: once
  evening.strip.area_length = Millimetres(6000);  // 1 m deep: six times; turned: 5 x 2 = 10
  EXPECT_EQ(drill_time(a_catalogue(), drill, 0, 0, evening).waves, 2);
}

TEST(PairsDrill, PartnersTakeTurns) {
  // 5 x 4 s is 20 s: 20 + 6 + 20. Two sets: four turns and three swaps; the partner's turn is the rest.
  EXPECT_EQ(doing(a_pairs_drill(), 0, an_evening()), 46000);
  EXPECT_EQ(doing(a_pairs_drill(), 1, an_evening()), 98000);
}

TEST(PairsDrill, ATrioTakesThreeTurns) {
  session::Evening evening = an_evening();
  evening.turnout = 13;
  EXPECT_EQ(doing(a_pairs_drill(), 0, evening), 3 * 20000 + 2 * 6000);
  EXPECT_EQ(doing(a_pairs_drill(), 1, evening), 6 * 20000 + 5 * 6000);
  EXPECT_EQ(drill_time(a_catalogue(), a_pairs_drill(), 0, 0, evening).moving_permille, 1000 * 20 / 72);
}

TEST(PairsDrill, BothAtOnceIsOneTurn) {
  catalogue::Drill drill = a_pairs_drill();
  drill.pair.both_at_once = true;
  EXPECT_EQ(doing(drill, 0, an_evening()), 20000);
  EXPECT_EQ(doing(drill, 1, an_evening()), 20000 + 30000 + 20000);
}

TEST(Pace, MultipliesDoingOnlyAndRoundsUp) {
  session::Evening evening = an_evening();
  evening.pace_thousandths = 1111;
  const DrillTime time = drill_time(a_catalogue(), a_hold(), 0, 0, evening);
  EXPECT_EQ(time.doing.count, 27775);
  EXPECT_EQ(time.telling.count, 20000);
}

TEST(Telling, ShrinksWithTheSquareRootOfTimesSeen) {
  EXPECT_EQ(telling_after(Milliseconds(40000), 0).count, 40000);
  EXPECT_EQ(telling_after(Milliseconds(40000), 3).count, 20000);
  EXPECT_EQ(telling_after(Milliseconds(40000), 8).count, 13320);   // factor 333 thousandths
  EXPECT_EQ(telling_after(Milliseconds(40000), 500).count, 8000);  // a fifth
  EXPECT_EQ(telling_after(Milliseconds(10000), 500).count, 5000);  // 5 s
  EXPECT_EQ(telling_after(Milliseconds(3000), 500).count, 3000);   // never more than the whole
  EXPECT_EQ(telling_after(Milliseconds(0), 1).count, 0);
  EXPECT_TRUE(rc::check("never more with more times", [] {
    const Milliseconds full(*rc::gen::inRange(0, 120000));
    const int times = *rc::gen::inRange(0, 2000000);
    RC_ASSERT(telling_after(full, times + 1) <= telling_after(full, times));
    RC_ASSERT(telling_after(full, times) <= full);
  }));
}

TEST(Telling, FollowsTheSquadsExposures) {
  session::Evening evening = an_evening();
  evening.exposures["hold"].times = 3;
  EXPECT_EQ(drill_time(a_catalogue(), a_hold(), 0, 0, evening).telling.count, 10000);
}

}  // namespace
}  // namespace lanework::clock
