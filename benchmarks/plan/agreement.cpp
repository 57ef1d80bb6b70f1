#include "benchmarks/plan/agreement.h"

#include <stdlib.h>

#include <cstdio>
#include <filesystem>

#include "benchmarks/plan/timing.h"
#include "tests/plan/referee.h"
#include "tests/plan/referee_evenings.h"

namespace lanework::bench {
namespace {

using plan::DrawnEvening;
using plan::Problem;
using plan::RefereeCase;
using plan::Solution;

constexpr int kRuns = 5;

struct Instances {
  std::vector<DrawnEvening> evenings;
  std::vector<RefereeCase> cases;
  std::vector<double> seconds;  // ours
};

Instances draw_and_solve(int count, plan::Drawn kind, plan::KernelWorkspace& workspace) {
  Instances out;
  for (int seed = 1; seed <= count; ++seed) {
    out.evenings.push_back(plan::draw_evening(static_cast<std::uint64_t>(seed), kind));
  }
  for (const DrawnEvening& one : out.evenings) {
    out.cases.push_back({one.name, &one.problem, plan::solve(one.problem, workspace)});
  }
  return out;
}

// Would an hour more give a better session?
bool short_of_time(const RefereeCase& one, plan::KernelWorkspace& workspace) {
  if (!one.solution) return false;
  Problem longer = *one.problem;
  longer.budget += 3600;
  const std::optional<Solution> better = plan::solve(longer, workspace);
  return plan::packed(better->evaluation.objective) < plan::packed(one.solution->evaluation.objective);
}

// Would it be better, or possible, without ceilings? Then one of them binds.
bool ceiling_binds(const RefereeCase& one) {
  if (!one.solution) return false;
  bool binds = false;
  for (const bool in_state : one.solution->in_state) binds = binds || in_state;
  return binds;
}

bool enough(const char* what, int found, int count, int percent) {
  const bool met = 100 * found >= percent * count;
  std::printf("  %-24s %3d of %d (%d %%; at least %d %%)%s\n", what, found, count, 100 * found / count, percent,
              met ? "" : ": TOO FEW");
  return met;
}

bool hard_enough(const Instances& instances, plan::KernelWorkspace& workspace) {
  int bound = 0;
  int short_slots = 0;
  int infeasible = 0;
  for (const RefereeCase& one : instances.cases) {
    bound += ceiling_binds(one) ? 1 : 0;
    short_slots += short_of_time(one, workspace) ? 1 : 0;
    infeasible += one.solution ? 0 : 1;
  }
  const int count = static_cast<int>(instances.cases.size());
  bool met = enough("a load ceiling binds", bound, count, 30);
  met = enough("short of time", short_slots, count, 20) && met;
  return enough("infeasible", infeasible, count, 10) && met;
}

struct Score {
  int agree = 0;
  int differ = 0;
  int undecided = 0;
  std::vector<double> seconds;
};

Score score(const char* name, const std::vector<plan::Verdict>& verdicts) {
  Score out;
  for (const plan::Verdict& verdict : verdicts) {
    out.seconds.push_back(verdict.seconds);
    if (!verdict.agrees) {
      ++out.differ;
      std::printf("  DIFFERS %s\n", verdict.detail.c_str());
    } else if (!verdict.decided) {
      ++out.undecided;
    } else {
      ++out.agree;
    }
  }
  std::printf("%s: equal on every level %d, different %d, undecided within the limit %d\n", name, out.agree, out.differ,
              out.undecided);
  return out;
}

void print_ratio(const char* name, const std::vector<double>& ours, const std::vector<double>& theirs) {
  int slower = 0;
  for (std::size_t i = 0; i < ours.size(); ++i) slower += ours[i] > theirs[i] ? 1 : 0;
  std::printf("  %s: ratio of medians %.0f (aim 100); instances on which we are the slower: %d of %zu\n", name,
              quantile(theirs, 0.5) / quantile(ours, 0.5), slower, ours.size());
}

}  // namespace

bool compare_with_referees(int count, int highs_count) {
  plan::KernelWorkspace workspace;
  Instances instances = draw_and_solve(count, plan::Drawn::kAny, workspace);
  std::printf("%d varied evenings on the shipped catalogue:\n", count);
  const bool hard = hard_enough(instances, workspace);

  std::string folder = (std::filesystem::temp_directory_path() / "lanework-bench-XXXXXX").string();
  if (mkdtemp(folder.data()) == nullptr) return false;
  const Score cbc = score("CBC", judge(plan::Referee::kCbc, instances.cases, folder));
  // Every tenth or so, so that the sample is as varied as the whole.
  std::vector<RefereeCase> sample;
  std::vector<double> sample_seconds;
  const std::size_t step = std::max<std::size_t>(1, instances.cases.size() / static_cast<std::size_t>(highs_count));
  for (std::size_t i = 0; i < instances.cases.size(); i += step) sample.push_back(instances.cases[i]);
  const Score highs = score("HiGHS", judge(plan::Referee::kHighs, sample, folder));

  for (const RefereeCase& one : instances.cases) {
    instances.seconds.push_back(median_seconds(kRuns, [&] { return plan::solve(*one.problem, workspace); }));
  }
  for (std::size_t i = 0; i < instances.cases.size(); i += step) sample_seconds.push_back(instances.seconds[i]);
  print_times("Lanework, all four levels", instances.seconds);
  print_times("CBC, all four levels", cbc.seconds);
  print_ratio("CBC", instances.seconds, cbc.seconds);
  print_times("Lanework, the sample", sample_seconds);
  print_times("HiGHS (WebAssembly in Node), all four levels", highs.seconds);
  print_ratio("HiGHS", sample_seconds, highs.seconds);

  const bool equal = cbc.differ + highs.differ == 0 && cbc.agree * 20 >= count * 19;
  if (equal) std::filesystem::remove_all(folder);
  return hard && equal;
}

bool compare_hardest(int count) {
  plan::KernelWorkspace workspace;
  const Instances instances = draw_and_solve(count, plan::Drawn::kHardest, workspace);
  std::vector<double> ours;
  for (const RefereeCase& one : instances.cases) {
    ours.push_back(median_seconds(kRuns, [&] { return plan::solve(*one.problem, workspace); }));
  }
  std::string folder = (std::filesystem::temp_directory_path() / "lanework-bench-XXXXXX").string();
  if (mkdtemp(folder.data()) == nullptr) return false;
  std::printf("%d evenings with the whole catalogue:\n", count);
  const Score cbc = score("CBC", judge(plan::Referee::kCbc, instances.cases, folder));
  print_times("Lanework, all four levels", ours);
  print_times("CBC, all four levels", cbc.seconds);
  print_ratio("CBC", ours, cbc.seconds);
  if (cbc.differ == 0) std::filesystem::remove_all(folder);
  return cbc.differ == 0;
}

}  // namespace lanework::bench
