// Walsh KM et al. 2013, J Athl Train 48(2):258-70, doi 10.4085/1062-6050-48.2.25: 30 minutes after the last flash or
// thunder; anything new starts the wait again; a count of 30 seconds is some 10 km, of 5 seconds a mile.
#include <gtest/gtest.h>

#include "core/care/environment/lightning.h"

namespace lanework::care::environment {
namespace {

Moment at(const char* time) { return moment_of({20000}, *parse_time_of_day(time)); }

LightningClock thunder(std::initializer_list<const char*> times) {
  LightningClock clock;
  for (const char* time : times) clock = told(clock, {at(time), LightningSign::kThunder, {}});
  return clock;
}

TEST(Walsh2013, HalfAnHourAfterTheLast) {
  EXPECT_EQ(judge_lightning(thunder({"14:00"}), at("14:00")).until, at("14:30"));
  EXPECT_EQ(judge_lightning(thunder({"14:00", "14:20"}), at("14:25")).until, at("14:50"));
  EXPECT_EQ(judge_lightning(thunder({"14:00"}), at("14:29")).state, LightningState::kStayIn);
  EXPECT_EQ(judge_lightning(thunder({"14:00"}), at("14:30")).state, LightningState::kMayGoOut);
  EXPECT_EQ(judge_lightning(thunder({"14:00", "14:20"}), at("14:49")).state, LightningState::kStayIn);
}

TEST(Walsh2013, TheCountIsADistance) {
  EXPECT_EQ(distance_of(Seconds(30)), Metres(10290));
  EXPECT_NEAR(static_cast<double>(distance_of(Seconds(5)).count) / 1609.344, 1, 0.1);
}

}  // namespace
}  // namespace lanework::care::environment
