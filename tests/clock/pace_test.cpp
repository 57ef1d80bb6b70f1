// The squad's pace: a conjugate update that an odd night cannot move far.
#include "core/clock/pace.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

namespace lanework::clock {
namespace {

std::vector<SessionLine> ten_minutes_of_doing() {
  SessionLine line;
  line.change = Milliseconds(20000);
  line.time.telling = Milliseconds(40000);
  line.time.doing = Milliseconds(600000);
  return {line};
}

TEST(Pace, PriorGoesByAge) {
  EXPECT_EQ(pace_thousandths(pace_prior(9)), 1050);
  EXPECT_EQ(pace_thousandths(pace_prior(13)), 1000);
}

TEST(Pace, ObservationTakesOffWhatPaceDoesNotMove) {
  EXPECT_NEAR(*observed_log_pace(Seconds(660), ten_minutes_of_doing()), 0.0, 1e-12);
  EXPECT_NEAR(*observed_log_pace(Seconds(720), ten_minutes_of_doing()), std::log(1.1), 1e-12);
  EXPECT_NEAR(*observed_log_pace(Seconds(1), ten_minutes_of_doing()), std::log(0.4), 1e-12);
  EXPECT_FALSE(observed_log_pace(Seconds(600), {}).has_value());
}

TEST(Pace, OneSessionByHand) {
  // s2 = 0.0064 + 0.0001, night 0.0144: gain 0.0065 / 0.0209 = 0.31100; 10 % slower moves the log by 0.02964.
  const PaceBelief after = learn_pace(pace_prior(13), std::log(1.1));
  EXPECT_NEAR(after.log_mean, 0.0065 / 0.0209 * std::log(1.1), 1e-12);
  EXPECT_NEAR(after.log_spread, std::sqrt(0.0144 / 0.0209 * 0.0065), 1e-12);
  EXPECT_EQ(pace_thousandths(after), 1030);
}

TEST(Pace, AnOddNightCannotMoveItFar) {
  EXPECT_TRUE(rc::check("less than 7 %, whatever was recorded", [] {
    const double odd = (*rc::gen::inRange(-3000, 3000)) / 1000.0;
    const PaceBelief after = learn_pace(pace_prior(13), odd);
    RC_ASSERT(std::fabs(after.log_mean) < 0.0677);
  }));
  PaceBelief known = pace_prior(13);
  for (int i = 0; i < 20; ++i) known = learn_pace(known, 0.0);
  EXPECT_LT(learn_pace(known, 2.0).log_mean, 0.05);
}

TEST(Pace, FindsTheTruthOverASeason) {
  PaceBelief belief = pace_prior(13);
  for (int i = 0; i < 30; ++i) belief = learn_pace(belief, std::log(1.2) + (i % 2 == 0 ? 0.1 : -0.1));
  EXPECT_NEAR(std::exp(belief.log_mean), 1.2, 0.03);
  EXPECT_LT(belief.log_spread, 0.05);
  EXPECT_GT(belief.log_spread, 0.02);  // drift keeps it open to change
}

TEST(Pace, StaysInsideItsLimits) {
  EXPECT_EQ(pace_thousandths({3.0, 0.1}), 1500);
  EXPECT_EQ(pace_thousandths({-3.0, 0.1}), 700);
}

}  // namespace
}  // namespace lanework::clock
