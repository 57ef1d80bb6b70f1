#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "app/serve/now.h"
#include "app/serve/pace.h"
#include "app/serve/sign_in/throttle.h"

namespace lanework::serve {
namespace {

constexpr std::int64_t kNow = 1'795'700'000;

TEST(Throttle, TheFirstCostNothingThenEachDoublesUpToTheMost) {
  const ThrottleRule rule{5, 1, 900, 86'400};
  for (int failures = 0; failures <= 5; ++failures) EXPECT_EQ(next_try(rule, failures, kNow, kNow), kNow);
  EXPECT_EQ(next_try(rule, 6, kNow, kNow), kNow + 1);
  EXPECT_EQ(next_try(rule, 7, kNow, kNow), kNow + 2);
  EXPECT_EQ(next_try(rule, 15, kNow, kNow), kNow + 512);
  EXPECT_EQ(next_try(rule, 16, kNow, kNow), kNow + 900);
  EXPECT_EQ(next_try(rule, 1'000'000, kNow, kNow), kNow + 900);
  EXPECT_EQ(next_try(rule, 7, kNow, kNow + 2), kNow + 2) << "the wait is over";
  EXPECT_EQ(next_try(rule, 50, kNow, kNow + 86'400), kNow + 86'400) << "long ago";
}

RC_GTEST_PROP(Throttle, NobodyEverWaitsLongerThanTheMost, ()) {
  const ThrottleRule rule =
      *rc::gen::element(kByAccountFromAnAddress, kByAccount, kByAddress, kBySecondFactor, kByPairing);
  const std::int64_t failures = *rc::gen::inRange<std::int64_t>(0, 5'000'000'000);
  const std::int64_t last = kNow + *rc::gen::inRange<std::int64_t>(-200'000, 200'000);
  const std::int64_t next = next_try(rule, failures, last, kNow);
  RC_ASSERT(next >= kNow);
  RC_ASSERT(next <= kNow + rule.most_wait_seconds);
}

TEST(Pace, ABurstThenSoManyAMinute) {
  Pace pace(PaceRule{3, 60});
  for (int i = 0; i < 3; ++i) EXPECT_FALSE(pace.too_fast("d-1", kNow));
  const auto refused = pace.too_fast("d-1", kNow);
  ASSERT_TRUE(refused);
  EXPECT_EQ(refused->status, 429);
  EXPECT_EQ(refused->header("Retry-After"), "1");
  EXPECT_FALSE(pace.too_fast("d-2", kNow)) << "each for itself";
  EXPECT_FALSE(pace.too_fast("d-1", kNow + 1));
  EXPECT_TRUE(pace.too_fast("d-1", kNow + 1));
  EXPECT_TRUE(pace.too_fast("d-1", kNow - 500)) << "a clock that was set back gives nothing";
  for (int i = 0; i < 3; ++i) EXPECT_FALSE(pace.too_fast("d-1", kNow + 9'999)) << "never more than the burst";
  EXPECT_TRUE(pace.too_fast("d-1", kNow + 9'999));
}

TEST(Now, AStampGoesBothWays) {
  for (const std::int64_t seconds : {std::int64_t{0}, kNow, kNow + 7'777'777})
    EXPECT_EQ(seconds_of_stamp(now_at(seconds).stamp), seconds);
  EXPECT_EQ(seconds_of_stamp("2026-11-26T18:05:00+01:00"), seconds_of_stamp("2026-11-26T17:05:00Z"));
  EXPECT_EQ(seconds_of_stamp("2026-11-26T18:05+01:00"), seconds_of_stamp("2026-11-26T12:05:00-05:00"));
}

}  // namespace
}  // namespace lanework::serve
