// The recursion of one file against its closed form, and what must hold whatever the players' speeds.
#include "core/clock/lane.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace lanework::clock {
namespace {

LaneRun any_run() {
  LaneRun run;
  run.players = *rc::gen::inRange(1, 25);
  run.passes = *rc::gen::inRange(1, 9);
  run.loop = Milliseconds(*rc::gen::inRange(0, 60000));
  run.gap = Milliseconds(*rc::gen::inRange(1, 8000));
  run.headway = Milliseconds(*rc::gen::inRange<std::int64_t>(0, run.gap.count + 1));
  run.gathers = *rc::gen::arbitrary<bool>();
  return run;
}

Milliseconds equal_players(const LaneRun& run) {
  std::vector<std::int64_t> returned;
  return run_lane(
      run, [&](int, int) { return run.loop.count; }, returned);
}

TEST(Lane, RecursionIsTheClosedFormWhenAllAreEqual) {
  EXPECT_TRUE(rc::check("recursion = closed form", [] {
    const LaneRun run = any_run();
    RC_ASSERT(equal_players(run) == closed_form(run));
  }));
}

TEST(Lane, ClosedFormByHand) {
  // Four players, gap 2 s, loop 15 s, three passes: the loop rules (15 > 8): 2 * 15 + 3 * 2 + 15 = 51 s.
  EXPECT_EQ(closed_form({4, 3, Milliseconds(15000), Milliseconds(2000), Milliseconds(500), false}).count, 51000);
  // Ten players: the gaps rule (20 > 15): 2 * 20 + 9 * 2 + 15 = 73 s.
  EXPECT_EQ(closed_form({10, 3, Milliseconds(15000), Milliseconds(2000), Milliseconds(500), false}).count, 73000);
  // All gather each time: 3 * (3 * 2 + 15) = 63 s.
  EXPECT_EQ(closed_form({4, 3, Milliseconds(15000), Milliseconds(2000), Milliseconds(500), true}).count, 63000);
}

TEST(Lane, MorePlayersPassesOrLoopNeverTakeLess) {
  EXPECT_TRUE(rc::check("monotone", [] {
    const LaneRun run = any_run();
    LaneRun more = run;
    more.players += *rc::gen::inRange(0, 3);
    more.passes += *rc::gen::inRange(0, 3);
    more.loop += Milliseconds(*rc::gen::inRange(0, 5000));
    RC_ASSERT(closed_form(more) >= closed_form(run));
  }));
}

TEST(Lane, NobodyOvertakesAndASlowerPassNeverHelps) {
  EXPECT_TRUE(rc::check("order kept, monotone in every loop", [] {
    const LaneRun run = any_run();
    const auto loops = *rc::gen::container<std::vector<int>>(static_cast<std::size_t>(run.players * run.passes),
                                                             rc::gen::inRange(0, 60000));
    const auto at = [&](int player, int pass) { return static_cast<std::size_t>(pass * run.players + player); };
    std::vector<std::int64_t> returned;
    const Milliseconds time = run_lane(
        run, [&](int player, int pass) { return std::int64_t{loops[at(player, pass)]}; }, returned);
    RC_ASSERT(returned.back() == time.count);
    for (std::size_t i = 1; i < returned.size(); ++i) {
      RC_ASSERT(returned[i] - returned[i - 1] >= run.headway.count);
    }
    std::vector<int> slower = loops;
    slower[*rc::gen::inRange<std::size_t>(0, slower.size())] += 1000;
    const Milliseconds later = run_lane(
        run, [&](int player, int pass) { return std::int64_t{slower[at(player, pass)]}; }, returned);
    RC_ASSERT(later >= time);
    RC_ASSERT(later <= time + Milliseconds(1000));
  }));
}

TEST(Lane, OneSlowPlayerHoldsTheRest) {
  // Three players a second apart, loops 5, 9 and 5 s, headway 0.5 s: back at 5, 10 and 10.5 s.
  std::vector<std::int64_t> returned;
  const LaneRun run{3, 1, Milliseconds(0), Milliseconds(1000), Milliseconds(500), false};
  const Milliseconds time = run_lane(
      run, [](int player, int) { return std::int64_t{player == 1 ? 9000 : 5000}; }, returned);
  EXPECT_EQ(time.count, 10500);
  EXPECT_EQ(returned, (std::vector<std::int64_t>{5000, 10000, 10500}));
}

}  // namespace
}  // namespace lanework::clock
