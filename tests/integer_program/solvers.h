// Two solvers from outside, given the exported text of integer programs.
#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/integer_program/program.h"

namespace lanework::integer_program {

enum class Solver {
  kCbc,   // Debian's coinor-cbc, reads MPS
  kHighs  // npm's highs, WebAssembly in Node, reads LP
};

enum class Status {
  kOptimal,
  kInfeasible,
  kStopped,  // out of time
  kNoAnswer  // it could not be run, or broke off
};

struct SolverAnswer {
  Status status = Status::kNoAnswer;
  std::optional<double> objective;  // of the best solution, where one was found
  std::optional<double> bound;      // no solution is less, where it says so
  double seconds = 0;               // processor time of solving, as the solver tells it, reading and start left out
  std::map<std::string, double> columns;  // those that are not 0
  struct BoundAt {
    double seconds;
    double bound;
  };
  std::vector<BoundAt> bounds;  // each time it rose; HiGHS only

  // One value a column of the program.
  [[nodiscard]] std::vector<double> values_of(const std::vector<Column>& columns_of_program) const;
};

// Where the text of a program is to stand: the stem with '.mps' or '.lp'. Writes it.
std::filesystem::path write_text(Solver solver, const Program& program, const std::filesystem::path& stem);

// One answer a file. Each solver stops at a gap below 1, which settles nothing among whole objectives, or after
// 'seconds'. Its answers and logs stay beside the files; 'list.txt' goes into the folder of the first.
std::vector<SolverAnswer> solve_files(Solver solver, const std::vector<std::filesystem::path>& files, int seconds);

}  // namespace lanework::integer_program
