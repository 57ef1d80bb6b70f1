// The families' side of a week against enumeration, and where a ceiling has more parts than are kept apart.
#include "core/block/week_families.h"

#include <gtest/gtest.h>

#include <functional>
#include <numeric>

#include "core/block/load_price.h"
#include "tests/block/random_block.h"

namespace lanework::block {
namespace {

struct Case {
  Problem problem;
  std::vector<int> members;
  std::vector<Ways> ways;
  WeekPrices prices;
};

Case draw_case(std::uint64_t seed, bool odd_loads) {
  plan::Dice dice(seed * 23);
  BlockShape shape;
  shape.weeks = 1;
  shape.sessions_a_week = dice.roll(1, 2);
  shape.families = dice.roll(1, 3);
  shape.drills_a_family = shape.families == 1 ? 2 : 1;
  Case out;
  out.problem = random_block(seed, shape);
  Problem& problem = out.problem;
  // Loads without a common measure, so that the pieces must be rounded.
  for (Kind& kind : problem.kinds) {
    for (std::vector<Option>& options : kind.options) {
      for (Option& option : options) {
        for (int& load : option.loads) load += odd_loads && load > 0 ? dice.roll(1, 997) : 0;
      }
    }
  }
  for (int& ceiling : problem.weeks.front().ceiling) ceiling = ceiling * dice.roll(20, 90) / 100;
  for (std::size_t d = 0; d < problem.drills.size(); ++d) out.members.push_back(static_cast<int>(d));
  const std::size_t count = problem.sessions.size();
  for (std::size_t i = 0; i < count; ++i) {
    out.ways.emplace_back();
    for (std::size_t m = 0; m < out.members.size(); ++m) {
      const int which = dice.roll(0, 9);
      out.ways[i].push_back(which == 0 ? kLeftOut : which == 1 ? ~kLeftOut : kAnyWay);
      out.prices.use.push_back(dice.roll(-60, 60) * kFine);
    }
    for (std::size_t f = 0; f < problem.families.size(); ++f) out.prices.credit.push_back(dice.roll(0, 80) * kFine / 2);
    out.prices.load.push_back(std::int64_t{dice.roll(-50, 50)} * 4000);
  }
  return out;
}

// What the choice is worth, straight from the definition; kDoesNotFit where the whole load passes its ceiling.
std::int64_t worth_of(const Case& at, int whole, const std::vector<int>& choice) {
  const Problem& problem = at.problem;
  const Week& week = problem.weeks.front();
  std::vector<int> credits(problem.families.size(), 0);
  std::int64_t value = 0;
  int load = 0;
  for (std::size_t i = 0; i < problem.sessions.size(); ++i) {
    const Kind& kind = problem.kinds[static_cast<std::size_t>(problem.sessions[i].kind)];
    for (std::size_t m = 0; m < at.members.size(); ++m) {
      const std::size_t place = i * at.members.size() + m;
      if (choice[place] < 0) continue;
      const Option& option = kind.options[m][static_cast<std::size_t>(choice[place])];
      const auto f = static_cast<std::size_t>(problem.groups[static_cast<std::size_t>(problem.drills[m].group)].family);
      credits[f] += option.credits;
      value += at.prices.use[place];
      value -= std::int64_t{at.prices.credit[i * problem.families.size() + f]} * option.credits;
      if (whole < 0) continue;
      load += option.loads[static_cast<std::size_t>(whole)];
      value += load_cost(at.prices.load[i], option.loads[static_cast<std::size_t>(whole)]);
    }
  }
  if (whole >= 0 && load > week.ceiling[static_cast<std::size_t>(whole)]) return SessionLister::kDoesNotFit;
  for (std::size_t f = 0; f < credits.size(); ++f)
    value += worth(problem.families[f], week.target[f], week.fixed[f] + credits[f]) * kFine;
  return value;
}

// Every choice that goes the ways; a drill that is not open is left out whatever they say.
void each_week(const Case& at, std::vector<int>& choice, std::size_t place,
               const std::function<void(const std::vector<int>&)>& what) {
  if (place == choice.size()) return what(choice);
  const std::size_t i = place / at.members.size();
  const std::size_t m = place % at.members.size();
  const Session& session = at.problem.sessions[i];
  const std::vector<Option>& options = at.problem.kinds[static_cast<std::size_t>(session.kind)].options[m];
  for (int o = -1; o < static_cast<int>(options.size()); ++o) {
    const bool may = o < 0 ? options.empty() || (at.ways[i][m] & kLeftOut) != 0 : (at.ways[i][m] & way_of(o)) != 0;
    choice[place] = o;
    if (may) each_week(at, choice, place + 1, what);
  }
  choice[place] = -1;
}

std::int64_t best_of(const Case& at, int whole) {
  std::int64_t best = SessionLister::kDoesNotFit;
  std::vector<int> scratch(at.problem.sessions.size() * at.members.size(), -1);
  each_week(at, scratch, 0,
            [&](const std::vector<int>& choice) { best = std::max(best, worth_of(at, whole, choice)); });
  return best;
}

TEST(WeekFamilies, EqualsEnumeration) {
  int with_load = 0;
  int impossible = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    const Case at = draw_case(seed, false);
    WeekFamilies families(at.problem);
    families.begin(0, at.problem.sessions, at.members);
    const int whole = families.whole_load();
    with_load += whole >= 0 ? 1 : 0;
    const std::int64_t best = best_of(at, whole);
    std::vector<int> choice;
    ASSERT_EQ(families.solve(at.problem.sessions, at.ways, at.prices, choice), best) << seed;
    if (best == SessionLister::kDoesNotFit) {
      ++impossible;
    } else {
      ASSERT_EQ(worth_of(at, whole, choice), best) << seed;
    }
  }
  EXPECT_GT(with_load, 700);
  EXPECT_GT(impossible, 10);
}

// Pieces rounded down can only let in more: never below the best, and near it.
TEST(WeekFamilies, RoundedPiecesStayABound) {
  int above = 0;
  int impossible = 0;
  for (std::uint64_t seed = 1; seed <= 500; ++seed) {
    const Case at = draw_case(seed, true);
    WeekFamilies families(at.problem);
    families.begin(0, at.problem.sessions, at.members);
    const std::int64_t best = best_of(at, families.whole_load());
    std::vector<int> choice;
    const std::int64_t found = families.solve(at.problem.sessions, at.ways, at.prices, choice);
    ASSERT_GE(found, best) << seed;
    impossible += best == SessionLister::kDoesNotFit ? 1 : 0;
    above += found > best ? 1 : 0;
  }
  EXPECT_LT(above, 20);
  EXPECT_LT(impossible, 100);
}

}  // namespace
}  // namespace lanework::block
