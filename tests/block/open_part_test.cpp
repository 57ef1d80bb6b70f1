// Weeks that are alike, and the bound of a part at any prices.
#include "core/block/open_part.h"

#include <gtest/gtest.h>

#include "core/block/branching.h"
#include "core/block/build_problem.h"
#include "core/block/dual.h"
#include "core/block/first_sets.h"
#include "core/block/set_limits.h"
#include "core/block/set_worth.h"
#include "tests/block/drawn_squads.h"
#include "tests/block/random_block.h"

namespace lanework::block {
namespace {

TEST(OpenPart, WeeksAlikeAreCountedOnce) {
  plan::KernelWorkspace workspace;
  const Built built = build_problem(draw_squad(3), workspace);
  const Problem& problem = built.problem;
  const std::vector<std::size_t> first = first_alike(problem);
  for (std::size_t w = 0; w < first.size(); ++w) {
    EXPECT_LE(first[w], w);
    EXPECT_EQ(problem.weeks[first[w]].spell, problem.weeks[w].spell);
    EXPECT_EQ(problem.weeks[first[w]].ceiling, problem.weeks[w].ceiling);
  }
  int weeks = 0;
  std::size_t sessions = 0;
  for (int spell = 0; spell < problem.spells; ++spell) {
    const OpenPart part = open_part(problem, spell);
    for (const int times : part.times) weeks += times;
    sessions += part.problem.sessions.size();
    for (const Session& session : part.problem.sessions) EXPECT_EQ(session.spell, spell);
  }
  EXPECT_EQ(weeks, static_cast<int>(problem.weeks.size()));
  EXPECT_LT(sessions, problem.sessions.size());  // or there was nothing to put together
}

// At the same prices for every week the part stands for, its bound is that of its weeks told one by one.
TEST(OpenPart, TheBoundOfAPartIsThatOfItsWeeksOneByOne) {
  plan::KernelWorkspace workspace;
  const Built built = build_problem(draw_squad(3), workspace);
  Problem problem = built.problem;
  problem.close.clear();
  const OpenPart part = open_part(problem, 0);
  Problem whole = problem;  // the first spell, no week put together
  std::erase_if(whole.sessions, [](const Session& session) { return session.spell != 0; });
  Dual folded(part.problem, part.times);
  Dual unfolded(whole, std::vector<int>(whole.weeks.size(), 1));
  const std::vector<std::size_t> alike = first_alike(problem);
  plan::Dice dice(5);
  std::vector<double> prices(folded.layout().count, 0);
  for (double& price : prices) price = dice.roll(0, 30);
  std::vector<double> spread(unfolded.layout().count, 0);
  const std::size_t drills = problem.drills.size();
  const std::size_t families = problem.families.size();
  for (std::size_t s = 0; s < whole.sessions.size(); ++s) {
    std::size_t like = 0;  // the session of the part that stands for this one
    std::size_t in_week = s;
    while (in_week > 0 && whole.sessions[in_week - 1].week == whole.sessions[s].week) --in_week;
    in_week = s - in_week;
    const int first_day = 7 * static_cast<int>(alike[static_cast<std::size_t>(whole.sessions[s].week)]);
    while (part.problem.sessions[like].day / 7 * 7 != first_day) ++like;
    like += in_week;
    for (std::size_t d = 0; d < drills; ++d)
      spread[unfolded.layout().use + s * drills + d] = prices[folded.layout().use + like * drills + d];
    for (std::size_t f = 0; f < families; ++f)
      spread[unfolded.layout().credit + s * families + f] = prices[folded.layout().credit + like * families + f];
    for (std::size_t l = 0; l < kLoads; ++l)
      spread[unfolded.layout().ceiling + s * kLoads + l] = prices[folded.layout().ceiling + like * kLoads + l];
  }
  for (std::size_t i = 0; i < static_cast<std::size_t>(problem.spells); ++i)
    spread[unfolded.layout().most_in + i] = prices[folded.layout().most_in + i];
  // Prices of the weeks' loads are left at nothing in both.
  std::fill(prices.begin() + static_cast<std::ptrdiff_t>(folded.layout().week_load),
            prices.begin() + static_cast<std::ptrdiff_t>(folded.layout().ceiling), 0);
  std::fill(prices.begin() + static_cast<std::ptrdiff_t>(folded.layout().least_in), prices.end(), 0);
  DualPoint a;
  DualPoint b;
  folded.evaluate(prices, a);
  unfolded.evaluate(spread, b);
  // The weeks of the other spell have no session here: they are worth what matches before them are.
  std::int64_t others = 0;
  for (const Week& week : whole.weeks) {
    if (week.spell == 0) continue;
    for (std::size_t f = 0; f < families; ++f)
      others += worth(whole.families[f], week.target[f], week.fixed[f]) * kFine;
  }
  EXPECT_EQ(a.bound, b.bound - others);
}

// Settling a drill never raises a bound above that of the whole, and one of the two ways keeps every plan.
TEST(Branching, NoSetsAreWorthMoreThanItsBound) {
  plan::KernelWorkspace workspace;
  const Built built = build_problem(draw_squad(1), workspace);
  const Problem& problem = built.problem;
  SetWorth worth(problem);
  const FirstSets firsts = first_sets(problem, 64);
  ASSERT_FALSE(firsts.sets.empty());
  Branching branching(problem, problem.spells - 1);
  std::vector<Sets> wished;
  branching.worth_at_most = [&](const Sets& sets) {
    std::int64_t sum = -swap_cost(problem, sets) * kFine;
    for (std::size_t p = 0; p < sets.size(); ++p) sum += worth.of(p, sets[p], {}).bound_fine;
    return sum;
  };
  branching.open({firsts.sets.front()}, worth.of(0, firsts.sets.front(), {}).bound_fine, 30);
  std::int64_t before = branching.bound_fine();
  for (int k = 0; k < 8 && branching.split(6, 0); ++k) {
    EXPECT_TRUE(keeps_set_limits(problem, branching.wished()));
    wished.push_back(branching.wished());
    EXPECT_LE(branching.bound_fine(), before);
    before = branching.bound_fine();
  }
  ASSERT_FALSE(wished.empty());
  for (const Sets& sets : wished) {
    const Evaluation evaluation = evaluate(problem, worth.plan_of(sets, {}));
    EXPECT_TRUE(evaluation.broken.empty());
    EXPECT_LE(evaluation.value * kFine, before);
  }
}

}  // namespace
}  // namespace lanework::block
