// Patricios JS, Schneider KJ, Dvorak J, et al. 2023, Br J Sports Med 57:695-711, doi 10.1136/bjsports-2023-106898: six
// steps of return after concussion, table read in a reprint. What its footnote says of mild and brief symptoms, and how
// far back symptoms go, is from memory: the rules mark it unverified.
#include <gtest/gtest.h>

#include "core/care/return_to_sport/course.h"
#include "core/care/return_to_sport/explore.h"
#include "core/care/return_to_sport/heart_rate.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

const Course& concussion() { return *test::return_rules().course("concussion"); }

TEST(Patricios2023, SixStepsOfAtLeast24Hours) {
  ASSERT_EQ(concussion().steps.size(), 6U);
  for (int step = 0; step < concussion().last(); ++step) EXPECT_EQ(concussion().step(step).least_hours, 24);
}

TEST(Patricios2023, StepSixNotBefore120HoursAfterStepOneBegan) {
  const Course adult = course_in_force(test::return_rules(), "concussion", "consensus", 25).course;
  EXPECT_EQ(explore(adult, promises_of("concussion")).earliest_last_step_hours, 120);
}

TEST(Patricios2023, HeartRateOfStepTwo) {
  EXPECT_EQ(concussion().step(1).heart_rate_percent, (std::vector<int>{55, 70}));
  EXPECT_NEAR(age_predicted_maximum(14), 206, 1e-9);
  EXPECT_NEAR(heart_rate_cap(14, 55), 113.3, 0.05);
  EXPECT_NEAR(heart_rate_cap(14, 70), 144.2, 0.05);
}

TEST(Patricios2023, StepsFourToSixBeginWithoutSymptoms) {
  for (int step = 0; step <= concussion().last(); ++step)
    EXPECT_EQ(concussion().step(step).symptom_free, step >= 3) << step;
}

TEST(Patricios2023, ClearanceBeforeAnyRiskOfAKnockToTheHead) {
  for (int step = 0; step <= concussion().last(); ++step) {
    const std::optional<int>& gate = concussion().step(step).gate;
    if (step == 3) {
      EXPECT_EQ(gate, concussion().gate_with("head-impact-risk"));
    }
    if (step == 4) {
      EXPECT_EQ(gate, concussion().gate_with("contact"));
    }
    EXPECT_EQ(concussion().step(step).risk >= Risk::kImpactRisk, step >= 3);
    EXPECT_EQ(concussion().step(step).risk >= Risk::kContact, step >= 4);
  }
}

// From memory: 2 points of 10 for less than an hour; symptoms in 4-6 back to step 3; never on the same day.
TEST(Patricios2023, WhatIsRecalledIsMarkedAndTakesTheCarefulSide) {
  ASSERT_TRUE(concussion().mild);
  EXPECT_EQ(concussion().mild->most_points, 2);
  EXPECT_EQ(concussion().mild->less_than_minutes, 60);
  EXPECT_TRUE(concussion().mild->unverified);
  for (int step = 3; step <= 5; ++step) {
    EXPECT_EQ(concussion().step(step).back_to, 2);
    EXPECT_TRUE(concussion().step(step).back_to_unverified);
  }
  EXPECT_TRUE(test::return_rules().same_day_unverified);
  CourseState state = opened({0});
  state.begun = true;
  const auto next =
      std::get<CourseState>(transition(concussion(), state, Check{Symptoms::kMild, true}, By::kPlayer, {600}));
  EXPECT_EQ(next.since.minutes, 600) << "mild and brief holds the step, though the footnote is said to let it go on";
}

}  // namespace
}  // namespace lanework::care
