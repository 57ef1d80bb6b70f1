// Each step as restrictions, and what the swap finder makes of them.
#include <gtest/gtest.h>

#include "core/care/return_to_sport/course.h"
#include "core/people/instruction.h"
#include "core/people/swaps.h"
#include "tests/care/shipped_rules.h"

namespace lanework::care {
namespace {

using catalogue::BodyArea;
using catalogue::StressKind;
using catalogue::test::shipped_catalogue;

std::vector<people::Restriction> held_at(const Course& course, int step) {
  CourseState state;
  state.step = step;
  state.begun = true;
  return restrictions_at(course, state, {BodyArea::kKnee});
}

TEST(StepsAsRestrictions, NoStepAllowsWhatALaterOneBars) {
  int rungs = 0;
  for (const Course& course : test::return_rules().courses) {
    for (const catalogue::Drill& drill : shipped_catalogue().drills) {
      for (const catalogue::Rung& rung : drill.rungs) {
        ++rungs;
        for (int step = 1; step <= course.last(); ++step) {
          const bool before = people::permits_all(held_at(course, step - 1), drill, rung);
          const bool now = people::permits_all(held_at(course, step), drill, rung);
          EXPECT_TRUE(now || !before) << course.id << " " << course.step(step).key << " " << drill.id;
        }
      }
    }
  }
  EXPECT_GT(rungs, 200);
}

TEST(StepsAsRestrictions, ContactIsBarredBeforeItsStepAndNothingAtTheLast) {
  for (const Course& course : test::return_rules().courses) {
    for (int step = 0; step <= course.last(); ++step) {
      for (const catalogue::Drill& drill : shipped_catalogue().drills) {
        for (const catalogue::Rung& rung : drill.rungs) {
          bool contact = false;
          for (const catalogue::Stress& stress : stresses_on(drill, rung))
            contact = contact || stress.kind == StressKind::kContact;
          const bool permitted = people::permits_all(held_at(course, step), drill, rung);
          if (contact && course.step(step).risk < Risk::kContact) {
            EXPECT_FALSE(permitted) << course.id << " " << course.step(step).key << " " << drill.id;
          }
          if (course.step(step).risk == Risk::kFull) {
            EXPECT_TRUE(permitted);
          }
        }
      }
    }
  }
}

TEST(StepsAsRestrictions, OfACoachsWordsNoneSaysWhatIsTheMatter) {
  for (const Course& course : test::return_rules().courses) {
    for (int step = 0; step <= course.last(); ++step) {
      for (const people::Restriction& one : held_at(course, step)) {
        EXPECT_EQ(people::private_word_in(people::instruction_for(one)), "");
        EXPECT_FALSE(one.instruction.empty());
      }
    }
  }
}

// Step 3 beside a squad that runs, turns and jumps: swaps, no contact among them.
TEST(StepsAsRestrictions, StepThreeMakesSwaps) {
  const Course& course = *test::return_rules().course("concussion");
  std::vector<people::SquadDrill> session;
  for (const char* id : {"easy-laps", "shoulder-contact-jump", "plant-and-cut", "side-plank"}) {
    for (std::size_t i = 0; i < shipped_catalogue().drills.size(); ++i) {
      if (shipped_catalogue().drills[i].id == id) session.push_back({static_cast<int>(i), 0, 0, Seconds(60)});
    }
  }
  ASSERT_EQ(session.size(), 4U);
  const auto held = held_at(course, *course.step_with("own-sport"));
  const auto swaps =
      people::swaps_for("Q21", held, shipped_catalogue(), session, {[](int, int, int) { return 60; }, {}, 0, {}});
  EXPECT_EQ(swaps.taking_part, people::TakingPart::kJoinsInWithSwaps);
  EXPECT_EQ(swaps.instruction, "no contact; only light jumping, twisting or fast running");
  ASSERT_FALSE(swaps.swaps.empty());
  for (const people::Swap& swap : swaps.swaps) {
    if (swap.drill < 0) continue;
    const auto& drill = shipped_catalogue().drills[static_cast<std::size_t>(swap.drill)];
    EXPECT_TRUE(people::permits_all(held, drill, drill.rungs[static_cast<std::size_t>(swap.rung)]));
  }
}

}  // namespace
}  // namespace lanework::care
