// The lightning clock: any order, told twice, past midnight, clocks that differ.
#include "core/care/environment/lightning.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace lanework::care::environment::test {
namespace {

const Moment kEvening = moment_of(*make_date(2026, 7, 14), TimeOfDay{18 * 60});

LightningEvent drawn_event() {
  LightningEvent event;
  event.at = plus_minutes(kEvening, *rc::gen::inRange(-60, 60));
  event.sign = static_cast<LightningSign>(*rc::gen::inRange(0, 3));
  if (event.sign == LightningSign::kFlashToThunder) event.flash_to_thunder = Seconds(*rc::gen::inRange(0, 120));
  return event;
}

std::vector<LightningEvent> drawn_events() {
  std::vector<LightningEvent> events;
  const int count = *rc::gen::inRange(1, 8);
  for (int i = 0; i < count; ++i) events.push_back(drawn_event());
  return events;
}

LightningClock fold(const std::vector<LightningEvent>& events) {
  LightningClock clock;
  for (const LightningEvent& event : events) clock = told(clock, event);
  return clock;
}

TEST(Lightning, AnyOrderAndToldTwiceIsTheSame) {
  EXPECT_TRUE(rc::check([] {
    const std::vector<LightningEvent> events = drawn_events();
    std::vector<LightningEvent> others = events;
    for (const LightningEvent& event : events)
      if (*rc::gen::arbitrary<bool>()) others.push_back(event);
    for (std::size_t i = others.size(); i > 1; --i)
      std::swap(others[i - 1], others[*rc::gen::inRange<std::size_t>(0, i)]);
    RC_ASSERT(fold(events) == fold(others));
  }));
}

TEST(Lightning, AnythingNewStartsTheWaitAgain) {
  EXPECT_TRUE(rc::check([] {
    const LightningClock before = fold(drawn_events());
    const LightningEvent event = drawn_event();
    const LightningClock after = told(before, event);
    const Moment until = *judge_lightning(after, kEvening).until;
    RC_ASSERT(until >= plus_minutes(event.at, kLightningWaitMinutes));
    RC_ASSERT(until >= *judge_lightning(before, kEvening).until);
    if (event.at >= before.last->at) RC_ASSERT(until == plus_minutes(event.at, kLightningWaitMinutes));
  }));
}

TEST(Lightning, NobodyIsOutWithinHalfAnHourOfAnyEvent) {
  EXPECT_TRUE(rc::check([] {
    const std::vector<LightningEvent> events = drawn_events();
    const Moment now = plus_minutes(kEvening, *rc::gen::inRange(-30, 150));
    const LightningVerdict verdict = judge_lightning(fold(events), now);
    const bool near = std::any_of(events.begin(), events.end(), [&](const LightningEvent& event) {
      return minutes_between(event.at, now) < kLightningWaitMinutes;
    });
    RC_ASSERT((verdict.state == LightningState::kMayGoOut) == !near);
    RC_ASSERT(verdict.change.no_session.has_value() == near);
  }));
}

TEST(Lightning, PastMidnight) {
  const Moment now = moment_of(*make_date(2026, 7, 15), TimeOfDay{10});
  const Moment heard = nearest(*parse_time_of_day("23:50"), now);
  EXPECT_EQ(minutes_between(heard, now), 20);
  const LightningVerdict verdict = judge_lightning({LightningEvent{heard, LightningSign::kThunder, {}}}, now);
  EXPECT_EQ(verdict.state, LightningState::kStayIn);
  EXPECT_EQ(to_words(*verdict.until, now), "00:20");
}

// Clocks of two phones differ: what is told counts, though it lies ahead.
TEST(Lightning, AnEventAheadOfTheClockCounts) {
  const LightningVerdict verdict =
      judge_lightning({LightningEvent{plus_minutes(kEvening, 3), LightningSign::kThunder, {}}}, kEvening);
  EXPECT_EQ(verdict.state, LightningState::kGoInNow);
  EXPECT_EQ(verdict.until, plus_minutes(kEvening, 33));
  EXPECT_EQ(verdict.change.reasons.front().minutes_old, 0);
}

TEST(Lightning, NothingToldIsNoAllClear) {
  const LightningVerdict verdict = judge_lightning({}, kEvening);
  EXPECT_EQ(verdict.state, LightningState::kNothingTold);
  EXPECT_NE(verdict.change.reasons.front().words.find("no all clear"), std::string::npos);
}

// However far the count says it is.
TEST(Lightning, ALongCountSendsEverybodyInToo) {
  const LightningEvent far{kEvening, LightningSign::kFlashToThunder, Seconds(90)};
  EXPECT_EQ(judge_lightning(told({}, far), kEvening).state, LightningState::kGoInNow);
}

TEST(Moment, NearestIsAtMostHalfADayAway) {
  EXPECT_TRUE(rc::check([] {
    const Moment to{*rc::gen::inRange(-3000000, 30000000)};
    const TimeOfDay time{*rc::gen::inRange(0, 1440)};
    const Moment found = nearest(time, to);
    RC_ASSERT(time_of_day_of(found) == time);
    RC_ASSERT(minutes_between(found, to) <= 720);
    RC_ASSERT(minutes_between(found, to) > -720);
    RC_ASSERT(moment_of(date_of(found), time_of_day_of(found)) == found);
    if (found.minutes >= 0) RC_ASSERT(parse_moment(to_iso(found)) == found);
  }));
}

TEST(Moment, SecondsAreDroppedOrCountedUp) {
  const Moment at = moment_of(*make_date(2026, 7, 14), TimeOfDay{1084});
  EXPECT_EQ(parse_moment("2026-07-14T18:04:00", true), at);
  EXPECT_EQ(parse_moment("2026-07-14T18:04:40"), at);
  EXPECT_EQ(parse_moment("2026-07-14T18:04:40", true), plus_minutes(at, 1));
  EXPECT_EQ(parse_moment("2026-07-14"), std::nullopt);
  EXPECT_EQ(parse_moment("2026-02-30T18:04"), std::nullopt);
  EXPECT_EQ(parse_moment("2026-07-14T18:04+02:00"), std::nullopt);
  EXPECT_EQ(parse_moment("2026-07-14T18:04:00Z"), std::nullopt);
  EXPECT_EQ(parse_moment("2026-07-14T18:04:0Z"), std::nullopt);
}

}  // namespace
}  // namespace lanework::care::environment::test
