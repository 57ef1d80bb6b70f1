// Independent solvers as referees: they get the exported text of each level and their answer is mapped back
// to a choice and evaluated in whole numbers.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/solve.h"
#include "tests/integer_program/solvers.h"

namespace lanework::plan {

using Referee = integer_program::Solver;

struct RefereeCase {
  std::string name;
  const Problem* problem = nullptr;
  std::optional<Solution> solution;  // ours; empty: infeasible
};

struct Verdict {
  bool decided = false;  // false: the referee ran out of time on a level
  bool agrees = false;   // on every level it decided
  std::string detail;    // where they differ, or where the files are
  double seconds = 0;    // processor time of solving all levels, as the solver tells it, reading and start left out
};

// Files are written into the folder, which must exist; they stay where the referee disagrees. A referee that
// cannot be run agrees with nothing.
std::vector<Verdict> judge(Referee referee, const std::vector<RefereeCase>& cases, const std::filesystem::path& folder);

}  // namespace lanework::plan
