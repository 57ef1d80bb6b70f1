// Both kernels of the block against enumeration.
#include <gtest/gtest.h>

#include "core/block/family_kernel.h"
#include "core/block/session_kernel.h"
#include "tests/block/enumerate.h"
#include "tests/block/random_block.h"

namespace lanework::block {
namespace {

constexpr std::int64_t kNothing = INT64_MIN;

// The value of one session at prices, straight from the definition.
std::int64_t priced(const Problem& problem, const Session& session, const std::vector<std::int32_t>& prices,
                    const std::vector<int>& first, const std::vector<int>& choice) {
  const Kind& kind = problem.kinds[static_cast<std::size_t>(session.kind)];
  std::vector<bool> covered(problem.families.size(), false);
  std::int64_t value = 0;
  int steps = 0;
  int before = -1;
  for (std::size_t d = 0; d < choice.size(); ++d) {
    if (choice[d] < 0) continue;
    const int formation = static_cast<int>(problem.drills[d].formation);
    if (before >= 0) steps += kind.change[static_cast<std::size_t>(before)][static_cast<std::size_t>(formation)];
    before = formation;
    steps += kind.options[d][static_cast<std::size_t>(choice[d])].steps;
    value += prices[static_cast<std::size_t>(first[d] + choice[d])];
    covered[static_cast<std::size_t>(problem.groups[static_cast<std::size_t>(problem.drills[d].group)].family)] = true;
  }
  if (steps > session.budget) return kNothing;
  for (std::size_t f = 0; f < covered.size(); ++f) {
    if (problem.families[f].required && !covered[f]) value -= problem.uncovered * kFine;
  }
  return value;
}

TEST(SessionKernel, EqualsEnumeration) {
  int tight = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    plan::Dice dice(seed * 31);
    BlockShape shape;
    shape.families = dice.roll(1, 3);
    shape.drills_a_family = dice.roll(1, shape.families == 3 ? 1 : 2);
    shape.budget_percent = dice.roll(5, 110);
    const Problem problem = random_block(seed, shape);
    SessionKernel kernel(problem);
    const Session& session = problem.sessions[static_cast<std::size_t>(dice.roll(0, 1))];
    const std::vector<int>& first = kernel.first_option(session.kind);
    std::vector<std::int32_t> prices;
    for (int i = 0; i < first.back(); ++i) prices.push_back(dice.roll(-40, 60) * kFine / 2);
    std::vector<int> choice(problem.drills.size());
    const std::int64_t found = kernel.solve(session, prices, choice);
    EXPECT_EQ(found, priced(problem, session, prices, first, choice)) << seed;
    std::int64_t best = kNothing;
    std::vector<int> scratch(problem.drills.size(), -1);
    each_choice(problem.kinds[static_cast<std::size_t>(session.kind)], scratch, 0, [&](const std::vector<int>& one) {
      const std::int64_t value = priced(problem, session, prices, first, one);
      if (value == kNothing) ++tight;
      best = std::max(best, value);
    });
    ASSERT_EQ(found, best) << seed;
  }
  EXPECT_GT(tight, 1000);  // the clock must have bound, or this says nothing
}

// The value of one family's pattern at prices, straight from the definition.
struct FamilyPrices {
  const std::vector<std::int32_t>& earns;
  const std::vector<std::int32_t>& pays;
  const SetPrices& sets;
  const std::vector<int>& times;  // by week
};

std::int64_t family_value(const Problem& problem, int family, const FamilyPrices& prices, const Plan& plan) {
  std::int64_t value = 0;
  std::vector<int> credits(problem.weeks.size(), 0);
  for (std::size_t d = 0; d < problem.drills.size(); ++d) {
    if (problem.groups[static_cast<std::size_t>(problem.drills[d].group)].family != family) continue;
    for (std::size_t p = 0; p < plan.sets.size(); ++p) {
      const bool then = p == 0 ? problem.drills[d].current : plan.sets[p - 1][d] != 0;
      if (plan.sets[p][d] != 0 && !then) value -= problem.swap * kFine + prices.sets.comes_in[p];
    }
    for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
      const Session& session = problem.sessions[s];
      const auto& options = problem.kinds[static_cast<std::size_t>(session.kind)].options[d];
      const int choice = plan.choice[s][d];
      const int times = prices.times[static_cast<std::size_t>(session.week)];
      if (choice < 0) {
        if (plan.sets[static_cast<std::size_t>(session.spell)][d] != 0 && !options.empty())
          value -= times * problem.drills[d].left_out * kFine;
        continue;
      }
      const int gives = options[static_cast<std::size_t>(choice)].credits;
      value += times * (prices.earns[s * problem.drills.size() + d] - prices.pays[s] * gives);
      credits[static_cast<std::size_t>(session.week)] += gives;
    }
  }
  for (std::size_t w = 0; w < credits.size(); ++w) {
    const auto f = static_cast<std::size_t>(family);
    const int target = problem.weeks[w].target[f];
    value += prices.times[w] * worth(problem.families[f], target, problem.weeks[w].fixed[f] + credits[w]) * kFine;
  }
  return value;
}

TEST(FamilyKernel, EqualsEnumeration) {
  int swapped = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    plan::Dice dice(seed * 57);
    BlockShape shape;
    shape.families = 1;
    shape.drills_a_family = 3;
    shape.weeks = 2;
    shape.spells = dice.roll(1, 2);
    shape.sessions_a_week = shape.spells == 2 ? 1 : dice.roll(1, 2);
    if (shape.sessions_a_week == 2) shape.weeks = 1;
    const Problem problem = random_block(seed, shape);
    std::vector<std::int32_t> earns;
    std::vector<std::int32_t> pays;
    for (std::size_t s = 0; s < problem.sessions.size(); ++s) {
      pays.push_back(dice.roll(0, 60) * kFine);
      for (std::size_t d = 0; d < problem.drills.size(); ++d) earns.push_back(dice.roll(-60, 150) * kFine);
    }
    SetPrices prices;
    for (int p = 0; p < problem.spells; ++p) prices.comes_in.push_back(dice.roll(-20, 40) * kFine);
    // Some weeks stand for two, some drills are settled in or out.
    std::vector<int> times;
    for (std::size_t w = 0; w < problem.weeks.size(); ++w) times.push_back(dice.roll(1, 2));
    SettledDrills settled;
    for (int p = 0; p < problem.spells; ++p) {
      settled.in.push_back(dice.roll(0, 3) == 0 ? 1U << dice.roll(0, 2) : 0);
      settled.out.push_back(dice.roll(0, 3) == 0 ? 1U << dice.roll(0, 2) : 0);
    }
    FamilyKernel kernel(problem, 0, times);
    FamilyPattern pattern;
    const bool any = kernel.solve(earns, pays, prices, settled, pattern);

    Plan found = empty_plan(problem);
    for (std::size_t p = 0; any && p < found.sets.size(); ++p) {
      for (std::size_t d = 0; d < problem.drills.size(); ++d) found.sets[p][d] = (pattern.members[p] >> d & 1U) != 0;
    }
    for (std::size_t s = 0; any && s < problem.sessions.size(); ++s) found.choice[s] = pattern.option[s];
    if (any) {
      EXPECT_EQ(pattern.value, family_value(problem, 0, {earns, pays, prices, times}, found)) << seed;
    }

    std::int64_t best = kNothing;
    Plan plan = empty_plan(problem);
    std::function<void(std::size_t)> sessions = [&](std::size_t s) {
      if (s == problem.sessions.size()) {
        best = std::max(best, family_value(problem, 0, {earns, pays, prices, times}, plan));
        return;
      }
      const Session& session = problem.sessions[s];
      Kind kind = problem.kinds[static_cast<std::size_t>(session.kind)];
      for (std::size_t d = 0; d < problem.drills.size(); ++d) {
        if (plan.sets[static_cast<std::size_t>(session.spell)][d] == 0) kind.options[d].clear();
      }
      std::vector<int> choice(problem.drills.size(), -1);
      each_choice(kind, choice, 0, [&](const std::vector<int>& one) {
        plan.choice[s] = one;
        sessions(s + 1);
      });
      plan.choice[s].assign(problem.drills.size(), -1);
    };
    std::function<void(std::size_t)> sets = [&](std::size_t p) {
      if (p == plan.sets.size()) {
        sessions(0);
        return;
      }
      std::vector<char> set(problem.drills.size(), 0);
      each_set(problem, set, 0, [&](const std::vector<char>& one) {
        for (std::size_t d = 0; d < one.size(); ++d) {
          if ((settled.in[p] >> d & 1U) != 0 && one[d] == 0) return;
          if ((settled.out[p] >> d & 1U) != 0 && one[d] != 0) return;
        }
        plan.sets[p] = one;
        sets(p + 1);
      });
    };
    sets(0);
    ASSERT_EQ(any, best != kNothing) << seed;
    if (!any) continue;
    ASSERT_EQ(pattern.value, best) << seed;
    if (plan.sets.size() == 2 && found.sets[0] != found.sets[1]) ++swapped;
  }
  EXPECT_GT(swapped, 50);
}

}  // namespace
}  // namespace lanework::block
