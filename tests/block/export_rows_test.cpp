// The exported rows against enumeration: CBC (Debian's coinor-cbc) on MPS and HiGHS (npm's highs) on LP must find
// the best plan of tiny blocks, or that there is none.
#include "core/block/export_rows.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <stdlib.h>

#include <cmath>

#include "tests/block/enumerate.h"
#include "tests/block/random_block.h"
#include "tests/integer_program/solvers.h"

namespace lanework::block {
namespace {

namespace fs = std::filesystem;
using integer_program::Solver;
using integer_program::SolverAnswer;
using integer_program::Status;

constexpr int kSeconds = 60;

Problem tiny_block(std::uint64_t seed) {
  plan::Dice dice(seed * 29 + 3);
  BlockShape shape;
  shape.spells = dice.roll(1, 2);
  shape.weeks = shape.spells == 2 ? 2 : dice.roll(1, 2);
  shape.sessions_a_week = shape.weeks == 2 ? 1 : 2;
  shape.families = dice.roll(1, 2);
  shape.drills_a_family = shape.families == 2 ? dice.roll(1, 2) : dice.roll(2, 4);
  shape.budget_percent = dice.roll(20, 90);
  shape.ceiling_percent = dice.roll(20, 110);
  shape.fixed = seed % 5 == 0;
  Problem problem = random_block(seed, shape);
  problem.least_swaps = dice.roll(0, 1);
  for (Drill& drill : problem.drills) drill.unknown = !drill.current;
  problem.most_new_in_session = dice.roll(0, 1);
  // Hard sessions side by side now and then, so that keeping them apart costs something.
  if (problem.close.empty() && problem.sessions.size() > 1 && dice.roll(0, 1) == 1) problem.close.emplace_back(0, 1);
  for (Session& session : problem.sessions) {
    const int percent = dice.roll(0, 120);
    for (std::size_t l = 0; l < kLoads; ++l) session.hard[l] = session.ceiling[l] * percent / 100;
  }
  return problem;
}

// Empty when the solver's answer is the enumerated best.
std::string difference(const Problem& problem, const ExportTable& table, const SolverAnswer& answer) {
  const std::optional<Points> best = enumerate(problem);
  if (!best) return answer.status == Status::kInfeasible ? "" : "a plan is found where there is none";
  if (answer.status != Status::kOptimal || !answer.objective) return "no optimum is found";
  const Evaluation evaluation = evaluate(problem, plan_from_columns(table, answer.values_of(table.program.columns)));
  if (!evaluation.broken.empty()) return "the plan found breaks '" + evaluation.broken.front() + "'";
  const auto found = -std::llround(*answer.objective);
  if (found == *best && evaluation.value == *best) return "";
  return "the best is worth " + std::to_string(*best) + ", the plan found " + std::to_string(evaluation.value) +
         ", the objective says " + std::to_string(found);
}

class ExportedBlock : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = (fs::temp_directory_path() / "lanework-block-XXXXXX").string();
    ASSERT_NE(mkdtemp(folder_.data()), nullptr);
  }
  void TearDown() override {
    if (!HasFailure()) fs::remove_all(folder_);
  }
  std::string folder_;
};

TEST_F(ExportedBlock, CbcFindsTheEnumeratedBest) {
  EXPECT_TRUE(rc::check([&](std::uint64_t seed) {
    const Problem problem = tiny_block(seed);
    const ExportTable table = export_table(problem);
    const fs::path file = write_text(Solver::kCbc, table.program, fs::path(folder_) / "block");
    const std::string differs = difference(problem, table, solve_files(Solver::kCbc, {file}, kSeconds).front());
    RC_ASSERT(differs.empty());
  }));
}

// How often a rule costs something: the best plan without it is worth more, or there is one at last.
class Rules {
 public:
  void note(const Problem& problem) {
    const std::optional<Points> best = enumerate(problem);
    if (!best) ++infeasible;
    const auto costs = [&](const auto& lift) {
      Problem lifted = problem;
      lift(lifted);
      return enumerate(lifted) != best ? 1 : 0;
    };
    apart += costs([](Problem& p) { p.close.clear(); });
    fresh += costs([](Problem& p) { p.least_swaps = 0; });
    swaps += costs([](Problem& p) { p.first_swaps = p.most_swaps = 99; });
    first_uses += costs([](Problem& p) { p.most_new_in_session = p.most_new_in_week = 99; });
    fixed += costs([](Problem& p) {
      for (Drill& drill : p.drills) drill.must = 0;
    });
    weeks += costs([](Problem& p) {
      for (Week& week : p.weeks) week.ceiling.fill(1'000'000);
    });
  }
  int infeasible = 0;
  int apart = 0;
  int fresh = 0;
  int swaps = 0;
  int first_uses = 0;
  int weeks = 0;
  int fixed = 0;
};

TEST_F(ExportedBlock, HighsFindsTheEnumeratedBest) {
  constexpr std::uint64_t kInstances = 120;
  std::vector<Problem> problems;
  std::vector<ExportTable> tables;
  std::vector<fs::path> files;
  Rules rules;
  for (std::uint64_t seed = 1; seed <= kInstances; ++seed) {
    problems.push_back(tiny_block(seed));
    rules.note(problems.back());
    tables.push_back(export_table(problems.back()));
    files.push_back(
        write_text(Solver::kHighs, tables.back().program, fs::path(folder_) / ("block" + std::to_string(seed))));
  }
  const std::vector<SolverAnswer> answers = solve_files(Solver::kHighs, files, kSeconds);
  for (std::size_t i = 0; i < problems.size(); ++i) {
    EXPECT_EQ(difference(problems[i], tables[i], answers[i]), "") << files[i];
  }
  // Rules that never bind would say nothing.
  EXPECT_GE(rules.infeasible, 3);
  EXPECT_LE(rules.infeasible, 20);
  EXPECT_GE(rules.apart, 3);
  EXPECT_GE(rules.fresh, 3);
  EXPECT_GE(rules.swaps, 3);
  EXPECT_GE(rules.first_uses, 3);
  EXPECT_GE(rules.weeks, 3);
  EXPECT_GE(rules.fixed, 3);
}

}  // namespace
}  // namespace lanework::block
