// One week with its set given: against enumeration, and its bounds.
#include "core/block/week_solver.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>

#include "core/block/build_problem.h"
#include "core/block/set_worth.h"
#include "tests/block/drawn_squads.h"
#include "tests/block/enumerate.h"
#include "tests/block/random_block.h"

namespace lanework::block {
namespace {

Problem one_week(std::uint64_t seed, plan::Dice& dice) {
  BlockShape shape;
  shape.weeks = 1;
  shape.sessions_a_week = dice.roll(1, 2);
  shape.families = dice.roll(1, 3);
  shape.drills_a_family = shape.families == 1 ? 3 : 1;
  shape.budget_percent = dice.roll(10, 110);
  shape.ceiling_percent = dice.roll(20, 120);
  Problem problem = random_block(seed, shape);
  problem.first_swaps = 0;
  problem.most_new_in_session = dice.roll(0, 3);
  for (Drill& drill : problem.drills) drill.unknown = drill.unknown || dice.roll(0, 3) == 0;
  return problem;
}

TEST(WeekSolver, EqualsEnumeration) {
  int proved = 0;
  int bound_by_new = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    plan::Dice dice(seed * 7);
    const Problem problem = one_week(seed, dice);
    const std::optional<Points> best = best_with_sets(problem, empty_plan(problem));
    ASSERT_TRUE(best.has_value()) << seed;  // nothing at all keeps every row
    WeekSolver solver(problem);
    const std::vector<char> none(problem.drills.size(), 0);
    const std::vector<char> set = empty_plan(problem).sets.front();
    const WeekAnswer answer = solver.solve(0, set, none, false, {});
    Plan plan = empty_plan(problem);
    plan.choice = answer.choice;
    const Evaluation evaluation = evaluate(problem, plan);
    ASSERT_TRUE(evaluation.broken.empty()) << seed << ' ' << evaluation.broken.front();
    ASSERT_EQ(evaluation.value, answer.value) << seed;
    ASSERT_GE(answer.bound_fine, *best * kFine) << seed;
    ASSERT_GE(solver.bound(0, set, 5), *best * kFine) << seed;
    ASSERT_EQ(answer.value, *best) << seed;
    proved += answer.bound_fine < (*best + 1) * kFine ? 1 : 0;
    const std::vector<char> all(problem.drills.size(), 1);
    bound_by_new += solver.solve(0, set, all, false, {}).value > *best ? 1 : 0;
  }
  EXPECT_GT(proved, 1350);
  EXPECT_GT(bound_by_new, 50);  // or the limits on new drills were never tried
}

// The list of a session is whole: every choice near the best is in it, the cheapest of those that give alike.
// Lists so short that halves of halves must do the work: no half may lose what is best, and the bound comes down to it.
TEST(WeekSolver, SplitsLoseNothing) {
  int proved = 0;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    plan::Dice dice(seed * 11);
    const Problem problem = one_week(seed, dice);
    const std::optional<Points> best = best_with_sets(problem, empty_plan(problem));
    ASSERT_TRUE(best.has_value()) << seed;
    const std::vector<char> none(problem.drills.size(), 0);
    const WeekAnswer answer =
        WeekSolver(problem).solve(0, empty_plan(problem).sets.front(), none, false,
                                  {.rounds = 4, .splits = 400, .rounds_of_a_half = 2, .list_steps = 10, .joins = 10});
    ASSERT_GE(answer.bound_fine, *best * kFine) << seed;
    ASSERT_LE(answer.value, *best) << seed;
    proved += answer.bound_fine < (*best + 21) * kFine ? 1 : 0;
  }
  EXPECT_GT(proved, 330);
}

WeekEffort four_times(WeekEffort effort) {
  effort.splits *= 4;
  effort.list_steps *= 4;
  effort.joins *= 4;
  return effort;
}

// From its own best prices a week would see one round and find nothing.
TEST(WeekSolver, AskedAgainItStartsAfresh) {
  plan::KernelWorkspace workspace;
  for (const std::uint64_t seed : {3U, 8U, 11U, 14U, 24U}) {
    const Problem problem = build_problem(draw_squad(seed, {.sessions_a_week = 3}), workspace).problem;
    const std::vector<char> set = empty_plan(problem).sets.front();
    const std::vector<char> all(problem.drills.size(), 1);
    WeekSolver solver(problem);
    solver.solve(0, set, all, false, WeekEffort{});
    const WeekAnswer again = solver.solve(0, set, all, false, four_times({}));
    const WeekAnswer fresh = WeekSolver(problem).solve(0, set, all, false, four_times({}));
    EXPECT_EQ(again.value, fresh.value) << seed;
    EXPECT_EQ(again.bound_fine, fresh.bound_fine) << seed;
  }
}

// Afresh is now and then a little worse than before; the better of both is kept.
TEST(SetWorth, AskedAgainWithMoreEffortItDoesNoWorse) {
  plan::KernelWorkspace workspace;
  for (const std::uint64_t seed : {3U, 8U, 11U, 14U, 24U}) {
    const Problem problem = build_problem(draw_squad(seed, {.sessions_a_week = 3}), workspace).problem;
    const std::vector<char> set = empty_plan(problem).sets.front();
    SetWorth worth(problem);
    const SpellWorth first = worth.of(0, set, {});
    const SpellWorth again = worth.of(0, set, four_times({}));
    EXPECT_GE(again.value, first.value) << seed;
    EXPECT_LE(again.bound_fine, first.bound_fine) << seed;
  }
}

TEST(SessionLister, ListsAllThatIsNear) {
  int listed = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    plan::Dice dice(seed * 19);
    const Problem problem = one_week(seed, dice);
    const Session& session = problem.sessions.front();
    const Kind& kind = problem.kinds[static_cast<std::size_t>(session.kind)];
    std::vector<int> members;
    for (std::size_t d = 0; d < problem.drills.size(); ++d) members.push_back(static_cast<int>(d));
    const std::int32_t a_credit = dice.roll(0, 60) * kFine;
    SessionLister lister(problem);
    const Ways ways(members.size(), kAnyWay);
    const std::int64_t best =
        lister.prepare(session, members, 0, ways, [&](int, const Option& option) { return a_credit * option.credits; });
    const std::int32_t within = dice.roll(0, 80) * kFine;
    std::vector<ListedSession> list;
    ASSERT_TRUE(lister.list(within, 1'000'000, list)) << seed;
    ASSERT_TRUE(
        std::is_sorted(list.begin(), list.end(), [](const auto& a, const auto& b) { return a.short_of < b.short_of; }));
    std::vector<int> choice(problem.drills.size(), -1);
    each_choice(kind, choice, 0, [&](const std::vector<int>& one) {
      std::array<std::uint8_t, catalogue::kFamilies> credits{};
      Loads loads{};
      Points cost = 0;
      int steps = 0;
      int before = -1;
      std::vector<bool> covered(problem.families.size(), false);
      for (std::size_t d = 0; d < one.size(); ++d) {
        const Drill& drill = problem.drills[d];
        if (one[d] < 0) {
          cost += kind.options[d].empty() ? 0 : drill.left_out;
          continue;
        }
        const Option& option = kind.options[d][static_cast<std::size_t>(one[d])];
        const int formation = static_cast<int>(drill.formation);
        if (before >= 0) steps += kind.change[static_cast<std::size_t>(before)][static_cast<std::size_t>(formation)];
        before = formation;
        steps += option.steps;
        const auto f = static_cast<std::size_t>(problem.groups[static_cast<std::size_t>(drill.group)].family);
        credits[f] = static_cast<std::uint8_t>(credits[f] + option.credits);
        covered[f] = true;
        for (std::size_t l = 0; l < kLoads; ++l) loads[l] += option.loads[l];
        cost += option.departure;
      }
      for (std::size_t f = 0; f < covered.size(); ++f)
        cost += problem.families[f].required && !covered[f] ? problem.uncovered : 0;
      for (std::size_t l = 0; l < kLoads; ++l) {
        if (loads[l] > session.ceiling[l]) return;
      }
      if (steps > session.budget) return;
      std::int64_t value = -cost * kFine;
      for (const std::uint8_t c : credits) value += a_credit * c;
      ASSERT_LE(value, best) << seed;
      if (best - value > within) return;
      ++listed;
      EXPECT_TRUE(std::any_of(list.begin(), list.end(), [&](const ListedSession& like) {
        return like.credits == credits && like.loads == loads && like.cost <= cost;
      })) << seed;
    });
  }
  EXPECT_GT(listed, 1000);
}

}  // namespace
}  // namespace lanework::block
