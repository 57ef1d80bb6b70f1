// One small evening worked with pencil and paper from docs/model/clock.md and docs/model/session.md.
//
// Nine in the roster; one away, one sits out, one of another squad: six come, the youngest 12 today.
// Gathering 15 + 6 x 0.5 = 18 s.
// Easy laps, 2 passes: out 10 m at 2 m/s 5 s, turn 1, back at 1 m/s 10: loop 16 s. Three a lane, gap 2 s:
//   T = max(3 x 2, 16) + 2 x 2 + 16 = 36 s. Told in 20 s, done three times: half, 10 s. Takes 46 s.
// To the spread: walk 5 m at 1.25 m/s 4 s, regroup 4 + 6 x 0.25 = 5.5 s: 9.5, shown as 10 s.
// Side plank, 20 s a side: 20 + 4 + 20 = 44 s, told in 25 s: 69 s. Jump and stick, 5 x 3 s, told in 20 s: 35 s.
// Planned 18 + 46 + 10 + 69 + 0 + 35 = 178 s; starts 18, 74, 143.
// Margin. Laps: slow loop 18.56 s, hold-up 2.56 + 1.28 = 3.84 s; log spread^2 0.05^2 + (0.1 x 32 / 36)^2 = 0.010401;
//   plank 0.05^2 + 0.03^2 = 0.0034; jump 0.05^2 + 0.1^2 = 0.0125.
//   variance 13.48 + 6.58 + 2.81 (doing) + 9 + 56.25 + 36 (telling) + 20.25 + 5.64 (changes) + 32.49 (night) =
//   182.5: 13.51 s; over plan 3.84 + 0.356 + 2.475 + 0.859 = 7.53 s; 7.53 + 1.2816 x 13.51 = 24.84: 25 s. 178 + 25 <=
//   210.
// Moving: (36 x 888 + 44 x 909 + 15 x 1000) / 177.5 s = 489.
// Contacts: 50 x 20 % = 10, the day before a match half: 5. Five jumps are 5.
// Trunk: routine 80 s of 60, 5 quarters; now 40 s, 3: short 2 x weight 5 x 4 = 40. Jumps: 24 s of 20, 5; now 15 s, 3:
//   2 x 3 x 4 = 24. Laps 16 s of 32: 2 of 2. Shortfall 64. Balance has no drill: uncovered 1. Two dose steps: 8.
#include <gtest/gtest.h>

#include "tests/check/requests.h"
#include "tests/check/tiny.h"

namespace lanework::check {
namespace {

using namespace test;

TEST(ByHand, TheWorkedPlanPasses) {
  const Report report = report_of(tiny_request(), tiny_answer());
  EXPECT_TRUE(report.ok()) << lines(report);
  EXPECT_EQ(report.turnout, 6);
  EXPECT_EQ(report.age, 12);
  EXPECT_EQ(report.gathering_seconds, 18);
  EXPECT_EQ(report.planned_seconds, 178);
  EXPECT_EQ(report.margin_seconds, 25);
  EXPECT_EQ(report.moving_permille, 489);
  EXPECT_EQ(report.levels.uncovered, 1);
  EXPECT_EQ(report.levels.shortfall, 64);
  EXPECT_EQ(report.levels.changes, 8);
  EXPECT_EQ(report.levels.preference, 0);
  ASSERT_EQ(report.items.size(), 3U);
  EXPECT_EQ(report.items[0].takes_seconds, 46);
  EXPECT_EQ(report.items[1].change_seconds, 10);
  EXPECT_EQ(report.items[1].starts_seconds, 74);
  EXPECT_EQ(report.items[2].starts_seconds, 143);
}

// Trunk at half: routine 40 s of 60, 3 quarters; now 20 s, 1: short 2, one of it beyond half: 3 x 5 x 4 = 60; jumps 24.
TEST(ByHand, WorkThatIsNotEccentricCountsItsShareFromAnAgeOn) {
  Node request = tiny_request();
  Node eccentric = Node::make_table();
  eccentric.set("from_age", number(12));
  eccentric.set("other_work_percent", number(50));
  put(request, "catalogue.families.family.1.eccentric_first", eccentric);
  EXPECT_EQ(report_of(request, tiny_answer()).levels.shortfall, 84);
  put(request, "catalogue.families.family.1.eccentric_first.from_age", number(13));
  EXPECT_EQ(report_of(request, tiny_answer()).levels.shortfall, 64);
}

TEST(ByHand, WhatFilesMayLeaveOut) {
  Node request = tiny_request();
  erase(request, "squad.kit");
  erase(request, "squad.tonight");
  erase(request, "squad.taught");
  erase(request, "squad.slot.days_to_match");
  erase(request, "restrictions");
  put(request, "strip.line", yes());  // no cones without a kit
  const Report report = report_of(request, tiny_answer());
  // All eight of the squad come, the youngest is 9; nothing has been taught, no match is in sight.
  EXPECT_EQ(report.turnout, 8);
  EXPECT_EQ(report.age, 9);
  // Out at 1.8 m/s 5.556 s: loop 16.556 s; four a lane: 16.556 + 3 x 2 + 16.556 = 39.112 s, told in 20 s.
  EXPECT_EQ(report.items[0].takes_seconds, 60);
  EXPECT_EQ(report.gathering_seconds, 19);
  EXPECT_EQ(report.loads[0].ceiling, 6);
  EXPECT_EQ(report.loads[1].ceiling, 4);
  EXPECT_EQ(report.loads[3].ceiling, 2);
  EXPECT_FALSE(breaks(report, "cones"));
}

TEST(ByHand, LateTurnoutStatedAndPace) {
  Node request = tiny_request();
  put(request, "squad.tonight.turnout", number(7));
  put(request, "squad.tonight.late", number(2));
  put(request, "squad.clock.pace", real(1.1));
  const Report report = report_of(request, tiny_answer());
  EXPECT_EQ(report.turnout, 7);
  EXPECT_EQ(report.gathering_seconds, 29);  // 15 + 5 x 0.5 + 10 + 2 x 0.5 = 28.5
  // Four in the longer file: 16 + 3 x 2 + 16 = 38 s, x 1.1 = 41.8, + 10.
  EXPECT_EQ(report.items[0].takes_seconds, 52);
}

TEST(ByHand, WhoseRestrictionsHold) {
  Node request = tiny_request();
  // The restriction of another squad, and one of ours that ended yesterday, hold nobody back.
  EXPECT_FALSE(breaks(report_of(request, tiny_answer()), "squad-restriction"));
  put(request, "restrictions.restriction.2.until", text("2026-11-26"));
  EXPECT_TRUE(breaks(report_of(request, tiny_answer()), "squad-restriction"));
  // A squad file that takes everybody takes the restrictions of every squad of the roster.
  request = tiny_request();
  erase(request, "squad.in_roster");
  EXPECT_TRUE(breaks(report_of(request, tiny_answer()), "squad-restriction"));
}

TEST(ByHand, AFaultWhereTheRequestCannotBeRead) {
  Node request = tiny_request();
  erase(request, "strip");
  EXPECT_FALSE(check_session(request, tiny_answer()).ok());
  Node other = tiny_answer();
  put(other, "answer", text("faults"));
  EXPECT_FALSE(check_session(tiny_request(), other).ok());
}

}  // namespace
}  // namespace lanework::check
