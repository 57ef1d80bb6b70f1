// The kernel against enumeration, and its invariants on problems too large to enumerate.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/plan/solve.h"
#include "core/plan/sweep.h"
#include "tests/plan/brute_force.h"
#include "tests/plan/random_problem.h"

namespace lanework::plan {
namespace {

RandomShape random_shape(Dice& dice) {
  RandomShape shape;
  shape.groups = dice.roll(1, 4);
  shape.drills_a_group = dice.roll(1, shape.groups > 2 ? 1 : 3);
  shape.options_a_drill = dice.roll(1, 3);
  shape.budget_percent = dice.roll(5, 120);
  shape.ceiling_percent = dice.roll(10, 110);
  shape.pins = dice.roll(0, 1) == 1;
  return shape;
}

TEST(Kernel, EqualsEnumeration) {
  KernelWorkspace workspace;
  int infeasible = 0;
  int bound_by_load = 0;
  for (std::uint64_t seed = 1; seed <= 4500; ++seed) {
    Dice dice(seed * 77);
    const Problem problem = random_problem(seed, random_shape(dice));
    const std::optional<std::int64_t> expected = brute_force(problem);
    const std::optional<Solution> found = solve(problem, workspace);
    ASSERT_EQ(found.has_value(), expected.has_value()) << "seed " << seed;
    if (!found) {
      ++infeasible;
      continue;
    }
    ASSERT_TRUE(found->evaluation.feasible) << "seed " << seed;
    ASSERT_EQ(packed(found->evaluation.objective), *expected) << "seed " << seed;
    for (const bool in_state : found->in_state) bound_by_load += in_state ? 1 : 0;
  }
  // The draw must have met the hard cases, or the test says nothing.
  EXPECT_GT(infeasible, 200);
  EXPECT_GT(bound_by_load, 300);
}

// Groups without a drill, first and last too, and slots far longer than everything takes.
TEST(Kernel, EqualsEnumerationWithEmptyGroupsAndAllTheTime) {
  KernelWorkspace workspace;
  int found_some = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    Dice dice(seed * 131);
    RandomShape shape = random_shape(dice);
    shape.groups = dice.roll(2, 4);
    shape.empty_groups = true;
    if (dice.roll(0, 2) == 0) shape.budget_percent = dice.roll(120, 900);
    const Problem problem = random_problem(seed, shape);
    const std::optional<std::int64_t> expected = brute_force(problem);
    const std::optional<Solution> found = solve(problem, workspace);
    ASSERT_EQ(found.has_value(), expected.has_value()) << "seed " << seed;
    if (!found) continue;
    ++found_some;
    ASSERT_EQ(packed(found->evaluation.objective), *expected) << "seed " << seed;
  }
  EXPECT_GT(found_some, 500);
}

TEST(Kernel, AllLoadsInStateGivesTheSameValue) {
  KernelWorkspace workspace;
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    Dice dice(seed * 91);
    const Problem problem = random_problem(seed, random_shape(dice));
    const std::optional<Solution> found = solve(problem, workspace);
    const std::array<bool, kLoads> all = {true, true, true, true};
    const auto direct = search_with_loads(kernel_problem(problem, all), all, kForbidden, workspace);
    ASSERT_EQ(found.has_value(), direct.has_value());
    if (!found) continue;
    ASSERT_EQ(packed(found->evaluation.objective), static_cast<std::int64_t>(direct->value)) << seed;
  }
}

TEST(Kernel, MoreTimeNeverHurts) {
  EXPECT_TRUE(rc::check([](std::uint64_t seed) {
    KernelWorkspace workspace;
    RandomShape shape{.groups = 6, .drills_a_group = 3, .options_a_drill = 4, .budget_percent = 30};
    Problem problem = random_problem(seed, shape);
    const auto tight = solve(problem, workspace);
    problem.budget += 37;
    const auto wide = solve(problem, workspace);
    RC_ASSERT(!tight || (wide && packed(wide->evaluation.objective) <= packed(tight->evaluation.objective)));
  }));
}

TEST(Kernel, PackedObjectiveOrdersLevelByLevel) {
  EXPECT_TRUE(rc::check([] {
    const auto draw = [] {
      return Objective{
          *rc::gen::inRange<std::int64_t>(0, kUncoveredRange), *rc::gen::inRange<std::int64_t>(0, kShortfallRange),
          *rc::gen::inRange<std::int64_t>(0, kChangesRange), *rc::gen::inRange<std::int64_t>(0, kPreferenceRange)};
    };
    const Objective a = draw();
    const Objective b = draw();
    RC_ASSERT(unpacked(packed(a)) == a);
    const auto levels = [](const Objective& o) { return std::tie(o.uncovered, o.shortfall, o.changes, o.preference); };
    RC_ASSERT((levels(a) < levels(b)) == (packed(a) < packed(b)));
  }));
}

}  // namespace
}  // namespace lanework::plan
