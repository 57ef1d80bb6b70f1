// The block problem of one squad as rows and columns of a mixed-integer program, for solvers outside. Names and
// labels are those of docs/model/block.md, 'Exports'. Its least objective is minus the greatest value of a plan.
// Pure; integer coefficients.
#pragma once

#include <vector>

#include "core/block/problem.h"
#include "core/integer_program/program.h"

namespace lanework::block {

struct ExportTable {
  integer_program::Program program;
  std::vector<std::vector<int>> member_columns;               // m[p,d], [spell][drill]
  std::vector<std::vector<std::vector<int>>> option_columns;  // x[s,d,o], [session][drill][option]
};

ExportTable export_table(const Problem& problem);

// The plan that a solver's columns mean: m and x rounded. 'values' has one value a column.
Plan plan_from_columns(const ExportTable& table, const std::vector<double>& values);

}  // namespace lanework::block
