#include "core/plan/load_levels.h"

#include "core/plan/kernel.h"

namespace lanework::plan {
namespace {

// Sums before each drill; {0} once no later drill carries the load.
std::vector<std::vector<int>> sums_before(const KernelProblem& problem, std::size_t load, int ceiling) {
  std::vector<std::vector<int>> sums = {{0}};
  std::size_t last_with_load = 0;  // one past it
  for (std::size_t i = 0; i < problem.drills.size(); ++i) {
    std::vector<bool> reached(static_cast<std::size_t>(std::max(0, ceiling)) + 1, false);
    for (const int sum : sums.back()) {
      if (sum <= ceiling) reached[static_cast<std::size_t>(sum)] = true;
      for (const KernelOption& option : problem.drills[i].options) {
        if (option.loads[load] > 0) last_with_load = i + 1;
        if (sum + option.loads[load] <= ceiling) reached[static_cast<std::size_t>(sum + option.loads[load])] = true;
      }
    }
    std::vector<int> next;
    for (std::size_t v = 0; v < reached.size(); ++v) {
      if (reached[v]) next.push_back(static_cast<int>(v));
    }
    sums.push_back(std::move(next));
  }
  for (std::size_t i = last_with_load; i < sums.size(); ++i) sums[i] = {0};
  return sums;
}

}  // namespace

LoadLevels::LoadLevels(const KernelProblem& problem) {
  for (std::size_t load = 0; load < kLoads; ++load) {
    if (!problem.active[load]) continue;
    axes_.push_back({static_cast<int>(load), problem.ceiling[load], sums_before(problem, load, problem.ceiling[load])});
  }
  count_.assign(problem.drills.size() + 1, 1);
  for (const Axis& axis : axes_) {
    for (std::size_t i = 0; i < count_.size(); ++i) count_[i] *= axis.sums[i].size();
  }
}

int LoadLevels::after(std::size_t i, std::size_t level, const std::array<int, kLoads>& loads) const {
  std::size_t out = 0;
  std::size_t stride = 1;
  for (const Axis& axis : axes_) {
    const std::vector<int>& before = axis.sums[i];
    const std::vector<int>& behind = axis.sums[i + 1];
    const int sum = before[level % before.size()] + loads[static_cast<std::size_t>(axis.load)];
    level /= before.size();
    if (sum > axis.ceiling) return -1;
    if (behind.size() > 1) {
      const auto found = std::lower_bound(behind.begin(), behind.end(), sum);
      out += stride * static_cast<std::size_t>(found - behind.begin());
    }
    stride *= behind.size();
  }
  return static_cast<int>(out);
}

}  // namespace lanework::plan
