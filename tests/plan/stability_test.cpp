// Own-judgement weights may be off: moved by a quarter of themselves they must leave most of a plan as it is.
// And an unchanged evening must return the routine.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cstdio>
#include <set>

#include "core/catalogue/loads.h"
#include "core/clock/clock.h"
#include "core/plan/build_problem.h"
#include "core/plan/plan_session.h"
#include "tests/catalogue/shipped.h"
#include "tests/plan/referee_evenings.h"

namespace lanework::plan {
namespace {

std::set<int> drills_of(const Problem& problem, const Choice& choice) {
  std::set<int> out;
  for (std::size_t i = 0; i < choice.size(); ++i) {
    if (choice[i] >= 0) out.insert(problem.drills[i].drill);
  }
  return out;
}

// Share of the first set that is in the second too, percent.
int kept_percent(const std::set<int>& before, const std::set<int>& after) {
  const auto kept = std::count_if(before.begin(), before.end(), [&](int drill) { return after.count(drill) > 0; });
  return static_cast<int>(100 * kept / static_cast<std::ptrdiff_t>(before.size()));
}

class Moved {
 public:
  Moved(std::uint64_t seed, const DrawnEvening& drawn) : seed_(seed), drawn_(drawn) {
    const std::optional<Solution> solution = solve(drawn.problem, workspace_);
    if (solution) drills_ = drills_of(drawn.problem, solution->choice);
  }
  [[nodiscard]] bool feasible() const { return !drills_.empty(); }

  // Every weight of a family and of a change, up and down by a quarter; the least share kept, percent.
  int worst() {
    const catalogue::Catalogue& catalogue = catalogue::test::shipped_catalogue();
    int least = 100;
    for (const int percent : {75, 125}) {
      for (std::size_t g = 0; g < drawn_.problem.groups.size(); ++g) {
        Problem moved = drawn_.problem;
        for (Group& group : moved.groups) {
          if (group.family == drawn_.problem.groups[g].family) group.weight = group.weight * percent / 100;
        }
        least = std::min(
            least, kept(moved, catalogue.families[static_cast<std::size_t>(moved.groups[g].family)].name, percent));
      }
      for (const auto& [name, weight] : change_weights()) {
        session::Evening evening = drawn_.evening;
        evening.weights.*weight = evening.weights.*weight * percent / 100;
        const Seconds budget(drawn_.problem.budget + drawn_.problem.gathering + drawn_.problem.breaks);
        least = std::min(least, kept(build_problem(catalogue, *drawn_.routine, evening, budget), name, percent));
      }
    }
    return least;
  }
  [[nodiscard]] const std::string& weight_of_worst() const { return weight_; }

 private:
  std::uint64_t seed_;
  const DrawnEvening& drawn_;
  KernelWorkspace workspace_;
  std::set<int> drills_;
  int least_ = 101;
  std::string weight_;

  static std::vector<std::pair<std::string, int session::ChangeWeights::*>> change_weights() {
    using session::ChangeWeights;
    return {{"dose step", &ChangeWeights::dose_step},
            {"rung step", &ChangeWeights::rung_step},
            {"left out", &ChangeWeights::left_out},
            {"new drill", &ChangeWeights::new_drill}};
  }

  int kept(const Problem& moved, const std::string& weight, int percent) {
    const std::optional<Solution> solution = solve(moved, workspace_);
    if (!solution) return 0;
    const int share = kept_percent(drills_, drills_of(moved, solution->choice));
    if (share < least_) {
      least_ = share;
      weight_ = weight + " at " + std::to_string(percent) + " % on evening " + std::to_string(seed_);
    }
    return share;
  }
};

TEST(Stability, QuarterOfAWeightKeepsFourDrillsInFive) {
  constexpr std::uint64_t kEvenings = 60;
  int least = 100;
  std::string where;
  int feasible = 0;
  int adapted = 0;
  for (std::uint64_t seed = 1; seed <= kEvenings; ++seed) {
    const DrawnEvening drawn = draw_evening(seed, Drawn::kOrdinary);
    KernelWorkspace workspace;
    const std::optional<Solution> solution = solve(drawn.problem, workspace);
    if (!solution) continue;
    ++feasible;
    adapted += solution->evaluation.objective.changes > 0 ? 1 : 0;
    Moved moved(seed, drawn);
    const int worst = moved.worst();
    EXPECT_GE(worst, 80) << moved.weight_of_worst();
    if (worst < least) {
      least = worst;
      where = moved.weight_of_worst();
    }
  }
  // Evenings on which nothing changes would keep everything.
  EXPECT_GE(feasible, 45);
  EXPECT_GE(adapted, 20);
  std::printf("  least kept: %d %% (%s); %d of %d evenings were adapted\n", least, where.c_str(), adapted, feasible);
}

// The routine on a strip where each of its drills can be done, in a slot that holds it nine nights in ten.
session::Evening unchanged_evening(const catalogue::Routine& routine, int turnout, int lanes, int age) {
  session::Evening evening;
  evening.age = age;
  evening.turnout = turnout;
  evening.strip.lane_length = catalogue::kUsualLane;  // on a longer one the same runs may break a ceiling
  evening.strip.cone_spacing = Millimetres(5000);
  evening.strip.lanes = lanes;
  evening.strip.lane_gap = Millimetres(3000);
  evening.strip.area_width = Millimetres(25000);
  evening.strip.area_length = Millimetres(25000);
  evening.strip.wall = evening.strip.soft_ground = evening.strip.line = true;
  evening.kit = {40, 40, 40};
  const catalogue::Catalogue& catalogue = catalogue::test::shipped_catalogue();
  session::Session session;
  for (const catalogue::RoutineLine& line : routine.lines) {
    evening.exposures[catalogue.drills[static_cast<std::size_t>(line.drill)].id] = {10};
    session.items.push_back({line.drill, line.rung, line.dose, {}, {}, {}, {}});
  }
  const std::vector<clock::SessionLine> lines = clock::session_lines(session, catalogue, evening);
  evening.slot = clock::planned_time(lines) + clock::moment_margin(lines);
  return evening;
}

TEST(Stability, AnUnchangedEveningIsTheRoutine) {
  for (const catalogue::Routine& routine : shipped_routines()) {
    const bool holds = rc::check(routine.id, [&] {
      const int turnout = *rc::gen::inRange(6, 26);
      const int lanes = *rc::gen::inRange(2, 7);
      const int age = *rc::gen::inRange(routine.age_from, routine.age_to + 1);
      session::Evening evening = unchanged_evening(routine, turnout, lanes, age);
      evening.slot += Seconds(*rc::gen::inRange(0, 300));
      KernelWorkspace workspace;
      const Plan plan = plan_session(catalogue::test::shipped_catalogue(), routine, evening, workspace);
      RC_ASSERT(plan.outcome == Outcome::kOptimal);
      RC_ASSERT(plan.session.changes.empty());
      RC_ASSERT(plan.session.items.size() == routine.lines.size());
      for (std::size_t i = 0; i < routine.lines.size(); ++i) {
        const catalogue::RoutineLine& line = routine.lines[i];
        const session::Item& item = plan.session.items[i];
        RC_ASSERT(item.drill == line.drill);
        RC_ASSERT(item.rung == line.rung);
        RC_ASSERT(item.dose == line.dose);
      }
    });
    EXPECT_TRUE(holds) << routine.id;
  }
}

}  // namespace
}  // namespace lanework::plan
