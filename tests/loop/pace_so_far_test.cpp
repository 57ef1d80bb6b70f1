// How long a squad takes, from sessions that somebody timed: what is learned comes near what was so.
#include "core/loop/pace_so_far.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/base/elementary.h"
#include "core/clock/clock.h"
#include "tests/catalogue/shipped.h"
#include "tests/clock/an_evening.h"

namespace lanework::loop {
namespace {

using catalogue::test::shipped_catalogue;

// A shipped house routine, in as long as it takes at that pace.
TimedSession timed(double pace) {
  const auto documents = catalogue::test::read_folder(catalogue::test::shipped_folder() / "routines");
  const auto routine = catalogue::read_routine(documents.front(), shipped_catalogue()).value();
  TimedSession out{{}, {}, clock::an_evening()};
  for (const catalogue::RoutineLine& line : routine.lines) {
    out.planned.items.push_back({line.drill, line.rung, line.dose, {}, {}, {}, {}});
  }
  Milliseconds doing(0);
  Milliseconds beside(0);
  for (const clock::SessionLine& line : clock::session_lines(out.planned, shipped_catalogue(), out.evening)) {
    doing += line.time.doing;
    beside += line.change + line.time.telling;
  }
  out.recorded = Seconds(
      static_cast<std::int64_t>((static_cast<double>(doing.count) * pace + static_cast<double>(beside.count)) / 1000));
  return out;
}

constexpr int kAge = 13;

TEST(PaceSoFar, WithoutASessionItIsWhatIsBelievedOfThatAge) {
  EXPECT_EQ(pace_so_far(shipped_catalogue(), {}, kAge).thousandths, 1000);
  EXPECT_EQ(pace_so_far(shipped_catalogue(), {}, 9).thousandths, 1050) << "docs/model/clock.md";
  EXPECT_EQ(pace_so_far(shipped_catalogue(), {}, 9).sessions, 0);
}

TEST(PaceSoFar, OneOddNightMovesItLittle) {
  const auto pace = pace_so_far(shipped_catalogue(), {timed(2.0)}, kAge);
  EXPECT_EQ(pace.sessions, 1);
  EXPECT_GT(pace.thousandths, 1000);
  EXPECT_LE(pace.thousandths, 1070) << "docs/model/clock.md: less than 7 %, rounded";
}

// What the planner goes by now is no part of what is learned.
TEST(PaceSoFar, ThePaceThatPlansGoByDoesNotMatter) {
  TimedSession one = timed(1.2);
  TimedSession other = one;
  other.evening.pace_thousandths = 1400;
  EXPECT_EQ(pace_so_far(shipped_catalogue(), {one, one, one}, kAge).thousandths,
            pace_so_far(shipped_catalogue(), {other, other, other}, kAge).thousandths);
}

RC_GTEST_PROP(PaceSoFarProperty, ManyNightsComeNearWhatIsSo, ()) {
  const double pace = *rc::gen::inRange(80, 140) / 100.0;
  const std::vector<TimedSession> nights(30, timed(pace));
  const auto learned = pace_so_far(shipped_catalogue(), nights, kAge);
  RC_ASSERT(learned.sessions == 30);
  RC_ASSERT(std::abs(learned.thousandths - pace * 1000) < 30);
}

}  // namespace
}  // namespace lanework::loop
