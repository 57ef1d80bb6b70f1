// The fold of what several topics ask, and breaks as a planner takes them.
#include "core/care/environment/session_change.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace lanework::care::environment::test {
namespace {

Seconds drawn_seconds(int least, int most) { return Seconds(*rc::gen::inRange(least, most)); }

SessionChange drawn_change() {
  SessionChange out;
  const int session = *rc::gen::inRange(0, 6);
  if (session == 0) out.no_session = NoSession{};
  if (session == 1) out.no_session = NoSession{Moment{*rc::gen::inRange(0, 100)}};
  if (*rc::gen::arbitrary<bool>()) out.breaks = Breaks{drawn_seconds(1, 40), drawn_seconds(1, 40)};
  if (*rc::gen::arbitrary<bool>()) out.most_time = drawn_seconds(1, 40);
  out.effort = static_cast<Effort>(*rc::gen::inRange(0, 3));
  const int reasons = *rc::gen::inRange(0, 3);
  for (int i = 0; i < reasons; ++i)
    out.reasons.push_back({static_cast<Topic>(*rc::gen::inRange(0, 4)), *rc::gen::element<std::string>("a", "b"), "s",
                           *rc::gen::arbitrary<bool>(), *rc::gen::inRange(0, 2)});
  return most_careful(out, {});  // reasons in order, nothing beside an evening without session
}

TEST(SessionChange, TheFoldIsTheSameInAnyOrderAndTwice) {
  EXPECT_TRUE(rc::check([] {
    const SessionChange a = drawn_change();
    const SessionChange b = drawn_change();
    const SessionChange c = drawn_change();
    RC_ASSERT(most_careful(most_careful(a, b), c) == most_careful(a, most_careful(b, c)));
    RC_ASSERT(most_careful(a, b) == most_careful(b, a));
    RC_ASSERT(most_careful(a, a) == a);
    RC_ASSERT(most_careful(a, {}) == a);
  }));
}

TEST(SessionChange, TheFoldAsksNoLessThanEither) {
  EXPECT_TRUE(rc::check([] {
    const SessionChange a = drawn_change();
    const SessionChange b = drawn_change();
    const SessionChange both = most_careful(a, b);
    RC_ASSERT(at_least_as_careful(both, a));
    RC_ASSERT(at_least_as_careful(both, b));
    if (at_least_as_careful(a, b) && at_least_as_careful(b, a)) {
      SessionChange a_asks = a;
      SessionChange b_asks = b;
      a_asks.reasons.clear();
      b_asks.reasons.clear();
      RC_ASSERT(a_asks == b_asks);
    }
  }));
}

TEST(SessionChange, NoReasonIsLost) {
  EXPECT_TRUE(rc::check([] {
    const SessionChange a = drawn_change();
    const SessionChange b = drawn_change();
    const SessionChange both = most_careful(a, b);
    for (const SessionChange* one : {&a, &b})
      for (const Reason& reason : one->reasons)
        RC_ASSERT(std::count(both.reasons.begin(), both.reasons.end(), reason) == 1);
  }));
}

// The fewest that leave no stretch longer than the longest.
TEST(SessionChange, BreaksInASlot) {
  EXPECT_EQ(breaks_in({Seconds(960), Seconds(240)}, Seconds(3600)), (BreaksInSlot{3, Seconds(240)}));
  EXPECT_EQ(breaks_in({Seconds(960), Seconds(240)}, Seconds(900)).count, 0);
  EXPECT_EQ(breaks_in({Seconds(960), Seconds(240)}, Seconds(1200)).count, 1);
  EXPECT_TRUE(rc::check([] {
    const Breaks breaks{drawn_seconds(60, 2000), drawn_seconds(30, 600)};
    const Seconds slot = drawn_seconds(0, 8000);
    const std::int64_t count = breaks_in(breaks, slot).count;
    const auto kept = [&](std::int64_t n) {
      return slot.count - n * breaks.each.count <= (n + 1) * breaks.longest_stretch.count;
    };
    RC_ASSERT(kept(count));
    RC_ASSERT(count == 0 || !kept(count - 1));
  }));
}

TEST(SessionChange, InWords) {
  const Moment evening{20000 * 1440 + 18 * 60};
  SessionChange change;
  EXPECT_EQ(to_words(change, evening), "no change");
  change.breaks = Breaks{Seconds(660), Seconds(240)};
  change.most_time = Seconds(3600);
  change.effort = Effort::kLower;
  EXPECT_EQ(
      to_words(change, evening),
      "at most 60 minutes; after every 11 minutes at most a break of 4 minutes; less hard and less fast than usual");
  change.no_session = NoSession{plus_minutes(evening, 36)};
  EXPECT_EQ(to_words(change, evening).find("no session before 18:36; at most"), 0U);
  change.no_session = NoSession{};
  EXPECT_EQ(to_words(change, evening), "no session");
  change = {};
  change.no_session = NoSession{plus_minutes(evening, 6 * 60 + 10)};
  EXPECT_EQ(to_words(change, evening), "no session before 00:10 on Saturday 5 October 2024");
}

}  // namespace
}  // namespace lanework::care::environment::test
