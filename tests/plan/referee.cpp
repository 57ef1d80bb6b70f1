#include "tests/plan/referee.h"

#include <cmath>

#include "core/plan/export_rows.h"

namespace lanework::plan {
namespace {

namespace fs = std::filesystem;
using integer_program::SolverAnswer;
using integer_program::Status;

constexpr int kSecondsALevel = 120;

// An infeasible problem has one level to look at.
int levels_of(const RefereeCase& one) { return one.solution ? kLevels : 1; }

// Empty when the answer is what our solution says of this level.
std::string difference(const RefereeCase& one, const ExportTable& table, int level, const SolverAnswer& answer) {
  const std::string where = one.name + ", level " + std::to_string(level + 1) + ": ";
  if (answer.status == Status::kNoAnswer) return where + "the referee gave no answer";
  if (!one.solution) return answer.status == Status::kInfeasible ? "" : where + "the referee finds a session, we none";
  if (answer.status == Status::kInfeasible) return where + "the referee finds no session, we do";
  const std::vector<double> values = answer.values_of(table.columns);
  const Evaluation evaluation = evaluate(*one.problem, choice_from_columns(table, values));
  if (!evaluation.feasible) return where + "the referee's session breaks a constraint in whole numbers";
  for (int l = 0; l <= level; ++l) {
    const std::int64_t theirs = level_of(evaluation.objective, l);
    const std::int64_t ours = level_of(one.solution->evaluation.objective, l);
    if (theirs == ours) continue;
    return where + "value " + std::to_string(theirs) + " of level " + std::to_string(l + 1) + ", ours " +
           std::to_string(ours);
  }
  if (std::llround(answer.objective.value_or(0)) != level_of(evaluation.objective, level)) {
    return where + "the referee's own objective is " + std::to_string(answer.objective.value_or(0));
  }
  return "";
}

std::vector<fs::path> write_levels(Referee referee, const RefereeCase& one, const ExportTable& table,
                                   const fs::path& stem) {
  const Objective optimum = one.solution ? one.solution->evaluation.objective : Objective{};
  std::vector<fs::path> files;
  for (int level = 0; level < levels_of(one); ++level) {
    files.push_back(write_text(referee, level_program(table, level, optimum),
                               stem.string() + ".level" + std::to_string(level + 1)));
  }
  return files;
}

}  // namespace

std::vector<Verdict> judge(Referee referee, const std::vector<RefereeCase>& cases, const fs::path& folder) {
  std::vector<ExportTable> tables;
  std::vector<fs::path> files;
  for (std::size_t number = 0; number < cases.size(); ++number) {
    tables.push_back(export_table(*cases[number].problem));
    for (const fs::path& file :
         write_levels(referee, cases[number], tables.back(), folder / ("case" + std::to_string(number)))) {
      files.push_back(file);
    }
  }
  const std::vector<SolverAnswer> answers = solve_files(referee, files, kSecondsALevel);
  std::vector<Verdict> verdicts;
  std::size_t next = 0;
  for (std::size_t number = 0; number < cases.size(); ++number) {
    Verdict verdict{true, true, "", 0};
    for (int level = 0; level < levels_of(cases[number]); ++level, ++next) {
      const SolverAnswer& answer = answers[next];
      verdict.seconds += answer.seconds;
      if (answer.status == Status::kStopped) verdict.decided = false;
      if (answer.status == Status::kStopped || !verdict.agrees) continue;
      const std::string differs = difference(cases[number], tables[number], level, answer);
      if (differs.empty()) continue;
      verdict.agrees = false;
      verdict.detail = differs + " (" + files[next].string() + ")";
    }
    verdicts.push_back(std::move(verdict));
  }
  return verdicts;
}

}  // namespace lanework::plan
