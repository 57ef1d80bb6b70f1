// Whole plans on varied evenings of the shipped catalogue: what is promised about margin, reasons and
// conflicts holds.
#include "core/plan/plan_session.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/clock/clock.h"
#include "core/plan/build_problem.h"
#include "core/plan/infeasible.h"
#include "core/plan/keep_slot.h"
#include "core/plan/reason_words.h"
#include "tests/catalogue/shipped.h"
#include "tests/plan/referee_evenings.h"

namespace lanework::plan {
namespace {

const catalogue::Catalogue& shipped() { return catalogue::test::shipped_catalogue(); }

TEST(PlanSession, KeepsTheSlotNineNightsInTen) {
  KernelWorkspace workspace;
  int changed = 0;
  for (std::uint64_t seed = 1; seed <= 24; ++seed) {
    const DrawnEvening drawn = draw_evening(seed, Drawn::kOrdinary);
    const Plan plan = plan_session(shipped(), *drawn.routine, drawn.evening, workspace);
    if (plan.outcome != Outcome::kOptimal) continue;
    EXPECT_LE(plan.redos, 3) << drawn.name;
    const auto lines = clock::session_lines(plan.session, shipped(), drawn.evening);
    EXPECT_LE(plan.session.planned + clock::moment_margin(lines), drawn.evening.slot) << drawn.name;
    EXPECT_EQ(plan.session.changes.empty(), plan.solution.evaluation.objective.changes == 0) << drawn.name;
    for (const session::Change& change : plan.session.changes) {
      EXPECT_FALSE(words(change.why, shipped()).empty()) << drawn.name;
    }
    changed += plan.session.changes.empty() ? 0 : 1;
  }
  EXPECT_GT(changed, 5);  // or the evenings were too easy to say anything
}

TEST(PlanSession, EveryUncoveredFamilyHasItsCure) {
  KernelWorkspace workspace;
  int uncovered = 0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    DrawnEvening drawn = draw_evening(seed, Drawn::kOrdinary);
    drawn.evening.slot = Seconds(60 * 6);
    const Plan plan = plan_session(shipped(), *drawn.routine, drawn.evening, workspace);
    if (plan.outcome != Outcome::kOptimal) continue;
    EXPECT_EQ(static_cast<std::int64_t>(plan.uncovered.size()), plan.solution.evaluation.objective.uncovered);
    for (const Uncovered& family : plan.uncovered) EXPECT_FALSE(words(family.cure, shipped()).empty());
    uncovered += static_cast<int>(plan.uncovered.size());
  }
  EXPECT_GT(uncovered, 6);
}

// The cure and the price are the planner's own words for a longer slot: asked for it, it gives just that.
TEST(PlanSession, WhatMoreTimeBringsIsWhatALongerSlotGets) {
  KernelWorkspace workspace;
  int cures = 0;
  int prices = 0;
  for (std::uint64_t seed = 1; seed <= 24; ++seed) {
    DrawnEvening drawn = draw_evening(seed, Drawn::kOrdinary);
    drawn.evening.slot = Seconds(60 * (5 + static_cast<int>(seed) % 6));
    const Plan plan = plan_session(shipped(), *drawn.routine, drawn.evening, workspace);
    if (plan.outcome != Outcome::kOptimal) continue;
    const auto covers = [&](int more, catalogue::Family family) {
      const Seconds slot = drawn.evening.slot + Seconds(more);
      const SlotSearch longer = keep_slot(plan.problem, slot, plan.margin, shipped(), drawn.evening, workspace);
      return longer.kept &&
             std::any_of(longer.kept->session.items.begin(), longer.kept->session.items.end(),
                         [&](const session::Item& item) {
                           return shipped().drills[static_cast<std::size_t>(item.drill)].family == family;
                         });
    };
    for (const Uncovered& missing : plan.uncovered) {
      const auto* time = std::get_if<MoreTime>(&missing.cure);
      if (time == nullptr) continue;
      ++cures;
      EXPECT_TRUE(covers(static_cast<int>(time->seconds.count), missing.family)) << drawn.name;
      for (const MinutePrice& price : plan.prices) {
        const bool buys = std::any_of(price.buys.begin(), price.buys.end(),
                                      [&](const Gain& gain) { return gain.covers == missing.family; });
        if (!buys) continue;
        ++prices;
        EXPECT_TRUE(covers(60 * price.minutes, missing.family)) << drawn.name << words(price, shipped());
      }
    }
  }
  EXPECT_GT(cures, 5);
  EXPECT_GT(prices, 8);
}

TEST(PlanSession, TheLeastSlotIsTheLeast) {
  KernelWorkspace workspace;
  int tried = 0;
  for (std::uint64_t seed = 1; seed <= 6; ++seed) {
    Problem problem = draw_evening(seed, Drawn::kOrdinary).problem;
    for (ProblemDrill& drill : problem.drills) drill.pinned = drill.routine_line >= 0 && !drill.options.empty();
    problem.ceiling.fill(1'000'000'000);
    problem.budget = 60;
    ASSERT_FALSE(solve(problem, workspace).has_value()) << seed;
    const int least = least_budget(problem, workspace, [](const Solution&) { return true; });
    if (least < 0) continue;
    ++tried;
    problem.budget = least;
    EXPECT_TRUE(solve(problem, workspace).has_value()) << seed;
    problem.budget = least - 1;
    EXPECT_FALSE(solve(problem, workspace).has_value()) << seed;
  }
  EXPECT_GT(tried, 2);
}

TEST(PlanSession, AConflictHasNoIdleDemand) {
  KernelWorkspace workspace;
  int conflicts = 0;
  for (std::uint64_t seed = 1; seed <= 60 && conflicts < 5; ++seed) {
    const DrawnEvening drawn = draw_evening(seed, Drawn::kAny);
    const Plan plan = plan_session(shipped(), *drawn.routine, drawn.evening, workspace);
    if (plan.outcome == Outcome::kOptimal) continue;
    ++conflicts;
    EXPECT_FALSE(plan.conflict.demands.empty()) << drawn.name;
    EXPECT_FALSE(words(plan.conflict.ways_out, shipped()).empty()) << drawn.name;
    EXPECT_TRUE(plan.session.items.empty()) << drawn.name;
  }
  EXPECT_GT(conflicts, 2);
}

TEST(PlanSession, ASpareDrillStandsInForABarredOne) {
  const catalogue::Routine* routine = nullptr;
  for (const catalogue::Routine& candidate : shipped_routines()) {
    if (candidate.id == "early-teens") routine = &candidate;
  }
  ASSERT_NE(routine, nullptr);
  session::Evening evening = draw_evening(1, Drawn::kHardest).evening;
  evening.free_composition = false;
  evening.more_than_routine = false;
  evening.age = 13;
  evening.turnout = 14;
  evening.late = 0;
  evening.slot = Seconds(60 * 25);
  evening.days_to_match.reset();
  evening.bans = {"side-plank"};
  KernelWorkspace workspace;
  const Plan plan = plan_session(shipped(), *routine, evening, workspace);
  ASSERT_EQ(plan.outcome, Outcome::kOptimal);
  bool left_out = false;
  bool stands_in = false;
  for (const session::Change& change : plan.session.changes) {
    const catalogue::Drill& drill = shipped().drills[static_cast<std::size_t>(change.drill)];
    if (drill.id == "side-plank") {
      left_out = change.kind == session::ChangeKind::kLeftOut && change.why == session::Reason(session::Banned{});
    }
    if (change.kind == session::ChangeKind::kNewDrill) {
      stands_in = drill.family == catalogue::Family::kTrunk &&
                  words(change.why, shipped()) == "Side plank cannot be done, it is banned tonight";
    }
  }
  EXPECT_TRUE(left_out);
  EXPECT_TRUE(stands_in);
}

}  // namespace
}  // namespace lanework::plan
