// The session problem as rows and columns of a mixed-integer program: one table that both text formats are
// written from. Names and labels are those of docs/model/session.md, 'Exports'. Pure; integer coefficients.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "core/integer_program/program.h"
#include "core/plan/problem.h"

namespace lanework::plan {

// Objective levels, in the order of Objective.
inline constexpr int kLevels = 4;
// 'level' counts from 0.
std::int64_t level_of(const Objective& objective, int level);

struct ExportTable {
  std::vector<integer_program::Column> columns;  // the first is 'one', fixed at 1: it carries constants
  std::vector<integer_program::Row> rows;
  std::array<std::vector<integer_program::Term>, kLevels> objectives;  // minimised; may be empty
  std::vector<std::vector<int>> option_columns;                        // the column of x[i,o]
};

ExportTable export_table(const Problem& problem);

// One level as a program of its own: the rows of the table, then each earlier level held at its optimum.
// 'level' counts from 0. Level 0 needs no optimum, so that an infeasible problem can be written too.
integer_program::Program level_program(const ExportTable& table, int level, const Objective& optimum);

// One text a level, with the end of its file name: '.level1.mps' and so on. ending: '.mps' or '.lp', write: its writer.
using LevelTexts = std::vector<std::pair<std::string, std::string>>;
LevelTexts export_levels(const Problem& problem, const Objective& optimum, const std::string& ending,
                         std::string (*write)(const integer_program::Program&));

// The choice that a solver's columns mean: x[i,o] rounded. 'values' has one value a column.
Choice choice_from_columns(const ExportTable& table, const std::vector<double>& values);

}  // namespace lanework::plan
