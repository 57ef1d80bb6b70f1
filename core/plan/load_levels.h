// Load levels: for every drill position the sums of active loads that earlier drills can have reached.
// Before the first drill with a load, and after the last one, there is one level only, so a load costs
// nothing where it cannot matter.
#pragma once

#include <algorithm>
#include <array>
#include <vector>

#include "core/plan/problem.h"

namespace lanework::plan {

struct KernelProblem;

class LoadLevels {
 public:
  explicit LoadLevels(const KernelProblem& problem);

  // Number of levels before drill i; i may be the number of drills.
  [[nodiscard]] std::size_t count(std::size_t i) const { return count_[i]; }
  // Level before drill i+1 when drill i adds these loads; -1 when a ceiling would break.
  [[nodiscard]] int after(std::size_t i, std::size_t level, const std::array<int, kLoads>& loads) const;

 private:
  struct Axis {
    int load;
    int ceiling;
    std::vector<std::vector<int>> sums;  // before drill i, ascending
  };
  std::vector<Axis> axes_;
  std::vector<std::size_t> count_;
};

}  // namespace lanework::plan
