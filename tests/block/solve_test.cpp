// The block solver: its value against enumeration, its bound above every plan, the same bytes every time.
#include "core/block/solve.h"

#include <gtest/gtest.h>

#include <functional>

#include "core/block/build_problem.h"
#include "tests/block/drawn_squads.h"
#include "tests/block/enumerate.h"
#include "tests/block/random_block.h"

namespace lanework::block {
namespace {

// Draws of one kind against enumeration: how many have a plan, and in how many the value is the best one's.
struct Tally {
  int feasible = 0;
  int exact = 0;
  int proved = 0;
};

Tally against_enumeration(std::uint64_t seeds, const std::function<BlockShape(plan::Dice&)>& shape_of,
                          const Work& work = {}) {
  Tally tally;
  for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
    plan::Dice dice(seed * 13);
    const Problem problem = random_block(seed, shape_of(dice));
    const std::optional<Points> best = enumerate(problem);
    const Answer answer = solve(problem, work);
    if (answer.feasible) {
      EXPECT_TRUE(best.has_value()) << seed;
      const Evaluation evaluation = evaluate(problem, answer.plan);
      EXPECT_TRUE(evaluation.broken.empty()) << seed << ' ' << evaluation.broken.front();
      EXPECT_EQ(evaluation.value, answer.value) << seed;
    }
    if (!best) continue;
    ++tally.feasible;
    EXPECT_LE(*best * kFine, answer.bound_fine) << seed;
    if (answer.feasible && answer.value == *best) ++tally.exact;
    if (answer.feasible && bound_points(answer) == *best) ++tally.proved;
  }
  return tally;
}

TEST(Block, OneSpellAgainstEnumeration) {
  const Tally tally = against_enumeration(400, [](plan::Dice& dice) {
    BlockShape shape;
    shape.weeks = 1;
    shape.sessions_a_week = 2;
    shape.families = dice.roll(1, 2);
    shape.drills_a_family = shape.families == 1 ? 4 : 1;
    shape.budget_percent = dice.roll(20, 90);
    shape.ceiling_percent = dice.roll(20, 110);
    return shape;
  });
  EXPECT_GT(tally.feasible, 200);
  EXPECT_GE(tally.exact * 100, tally.feasible * 99) << tally.exact << " of " << tally.feasible;
  EXPECT_GE(tally.proved * 100, tally.feasible * 80) << tally.proved << " of " << tally.feasible;
}

TEST(Block, TwoSpellsAgainstEnumeration) {
  const Tally tally = against_enumeration(300, [](plan::Dice& dice) {
    BlockShape shape;
    shape.weeks = 2;
    shape.spells = 2;
    shape.sessions_a_week = 1;
    shape.families = 1;
    shape.drills_a_family = 3;
    shape.budget_percent = dice.roll(20, 90);
    shape.ceiling_percent = dice.roll(20, 110);
    return shape;
  });
  EXPECT_GT(tally.feasible, 150);
  EXPECT_GE(tally.exact * 100, tally.feasible * 95) << tally.exact << " of " << tally.feasible;
  EXPECT_GE(tally.proved * 100, tally.feasible * 60) << tally.proved << " of " << tally.feasible;
}

// As many drills and sessions as can be enumerated.
BlockShape of_one_family(int spells, plan::Dice& dice) {
  BlockShape shape;
  shape.weeks = spells;
  shape.spells = spells;
  shape.sessions_a_week = 3 - spells;
  shape.families = 1;
  shape.drills_a_family = 5 - spells;
  shape.budget_percent = dice.roll(20, 90);
  shape.ceiling_percent = dice.roll(20, 110);
  return shape;
}

TEST(Block, WhatIsFixedAgainstEnumeration) {
  for (const int spells : {1, 2}) {
    const Tally tally = against_enumeration(200, [spells](plan::Dice& dice) {
      BlockShape shape = of_one_family(spells, dice);
      shape.fixed = true;
      return shape;
    });
    EXPECT_GT(tally.feasible, 120) << spells;
    EXPECT_GE(tally.exact * 100, tally.feasible * 97) << spells << ": " << tally.exact << " of " << tally.feasible;
    EXPECT_GE(tally.proved * 100, tally.feasible * 60) << spells << ": " << tally.proved << " of " << tally.feasible;
  }
}

// Any first set may be chosen and none is listed: the spells alone have to find the plan and to bound it.
TEST(Block, FreeCompositionAgainstEnumeration) {
  Work work;
  work.first_sets = 0;
  for (const int spells : {1, 2}) {
    const auto shape_of = [spells](plan::Dice& dice) {
      BlockShape shape = of_one_family(spells, dice);
      shape.free = true;
      return shape;
    };
    const Tally tally = against_enumeration(300, shape_of, work);
    EXPECT_GT(tally.feasible, 180) << spells;
    EXPECT_GE(tally.exact * 100, tally.feasible * 90) << spells << ": " << tally.exact << " of " << tally.feasible;
    EXPECT_GE(tally.proved * 100, tally.feasible * 40) << spells << ": " << tally.proved << " of " << tally.feasible;
  }
}

TEST(Block, FreeCompositionIsWorthMoreAndChangesMore) {
  plan::KernelWorkspace workspace;
  Outline outline = draw_squad(3);
  const Answer routine = solve(build_problem(outline, workspace).problem, {});
  outline.free_composition = true;
  const Built built = build_problem(outline, workspace);
  const Answer free = solve(built.problem, {});
  ASSERT_TRUE(free.feasible);
  const Evaluation evaluation = evaluate(built.problem, free.plan);
  EXPECT_TRUE(evaluation.broken.empty()) << evaluation.broken.front();
  EXPECT_EQ(evaluation.value, free.value);
  EXPECT_LE(free.value * kFine, free.bound_fine);
  EXPECT_LE(gap_ten_thousandths(free), 400);
  EXPECT_GT(free.value, routine.value);
  int come_in = 0;
  for (std::size_t d = 0; d < built.problem.drills.size(); ++d)
    come_in += free.plan.sets.front()[d] != 0 && !built.problem.drills[d].current ? 1 : 0;
  EXPECT_GT(come_in, 3);
}

TEST(Block, SquadsOfTheShippedCatalogue) {
  plan::KernelWorkspace workspace;
  for (std::uint64_t seed = 1; seed <= 4; ++seed) {
    const Built built = build_problem(draw_squad(seed), workspace);
    const Answer answer = solve(built.problem, {});
    ASSERT_TRUE(answer.feasible) << seed;
    const Evaluation evaluation = evaluate(built.problem, answer.plan);
    EXPECT_TRUE(evaluation.broken.empty()) << seed;
    EXPECT_EQ(evaluation.value, answer.value);
    EXPECT_LE(answer.value * kFine, answer.bound_fine);
    EXPECT_LE(gap_ten_thousandths(answer), 350) << seed;
  }
}

TEST(Block, TheSameProblemGivesTheSamePlan) {
  plan::KernelWorkspace workspace;
  const Built built = build_problem(draw_squad(5), workspace);
  const Answer first = solve(built.problem, {});
  const Answer second = solve(built.problem, {});
  EXPECT_EQ(first.plan, second.plan);
  EXPECT_EQ(first.bound_fine, second.bound_fine);
}

TEST(Block, MoreTimeIsNeverWorseForTheBound) {
  plan::KernelWorkspace workspace;
  const Built built = build_problem(draw_squad(2), workspace);
  Problem longer = built.problem;
  for (Session& session : longer.sessions) session.budget += 12;
  const Answer now = solve(built.problem, {});
  const Answer then = solve(longer, {});
  EXPECT_LE(now.value * kFine, then.bound_fine);
}

TEST(Block, StopsWhenToldTo) {
  plan::KernelWorkspace workspace;
  const Built built = build_problem(draw_squad(1), workspace);
  const int whole = solve(built.problem, {}).rounds;
  int told = 0;
  const Answer answer = solve(built.problem, {}, [&](double) {
    ++told;
    return false;
  });
  EXPECT_EQ(told, 1);
  EXPECT_LT(answer.rounds, whole);
  EXPECT_TRUE(answer.feasible);
  EXPECT_LE(answer.value * kFine, answer.bound_fine);
}

TEST(Block, SpellsAreThreeOrFourWeeks) {
  EXPECT_EQ(spell_of_week(3), (std::vector<int>{0, 0, 0}));
  EXPECT_EQ(spell_of_week(4), (std::vector<int>{0, 0, 0, 0}));
  EXPECT_EQ(spell_of_week(5), (std::vector<int>{0, 0, 0, 1, 1}));
  EXPECT_EQ(spell_of_week(6), (std::vector<int>{0, 0, 0, 1, 1, 1}));
  EXPECT_EQ(spell_of_week(7), (std::vector<int>{0, 0, 0, 0, 1, 1, 1}));
  EXPECT_EQ(spell_of_week(8), (std::vector<int>{0, 0, 0, 0, 1, 1, 1, 1}));
}

}  // namespace
}  // namespace lanework::block
