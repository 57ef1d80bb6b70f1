// The planner against two independent solvers on a few of the evenings that the benchmark takes in full:
// CBC (Debian's coinor-cbc) on MPS, HiGHS (npm's highs) on LP.
#include "tests/plan/referee.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include "tests/plan/referee_evenings.h"

namespace lanework::plan {
namespace {

// Solves evenings first .. first+count-1 and holds them against the referee.
void expect_agreement(Referee referee, std::uint64_t first, std::uint64_t count) {
  std::vector<DrawnEvening> evenings;
  for (std::uint64_t seed = first; seed < first + count; ++seed) evenings.push_back(draw_evening(seed, Drawn::kAny));
  KernelWorkspace workspace;
  std::vector<RefereeCase> cases;
  for (const DrawnEvening& one : evenings) {
    cases.push_back({one.name, &one.problem, solve(one.problem, workspace)});
  }
  std::string folder = (std::filesystem::temp_directory_path() / "lanework-referee-XXXXXX").string();
  ASSERT_NE(mkdtemp(folder.data()), nullptr);
  bool all_agree = true;
  int decided = 0;
  for (const Verdict& verdict : judge(referee, cases, folder)) {
    EXPECT_TRUE(verdict.agrees) << verdict.detail;
    all_agree = all_agree && verdict.agrees;
    decided += verdict.decided ? 1 : 0;
  }
  EXPECT_GE(decided * 4, static_cast<int>(count) * 3);  // or nothing was compared
  if (all_agree) std::filesystem::remove_all(folder);
}

TEST(Referee, CbcAgreesLevelByLevel) { expect_agreement(Referee::kCbc, 1, 12); }

TEST(Referee, HighsAgreesLevelByLevel) { expect_agreement(Referee::kHighs, 101, 4); }

}  // namespace
}  // namespace lanework::plan
