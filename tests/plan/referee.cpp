#include "tests/plan/referee.h"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <sstream>

#include "core/plan/export_lp.h"
#include "core/plan/export_mps.h"

namespace lanework::plan {
namespace {

namespace fs = std::filesystem;

constexpr int kSecondsALevel = 120;

enum class Status { kOptimal, kInfeasible, kStopped, kNoAnswer };

struct LevelAnswer {
  Status status = Status::kNoAnswer;
  double objective = 0;
  double seconds = 0;
  std::map<std::string, double> columns;  // those that are not 0
};

fs::path level_file(const fs::path& folder, std::size_t number, int level, const char* ending) {
  return folder / ("case" + std::to_string(number) + ".level" + std::to_string(level + 1) + ending);
}

// An infeasible problem has one level to look at.
int levels_of(const RefereeCase& one) { return one.solution ? kLevels : 1; }

void read_columns(std::istream& in, LevelAnswer& answer, bool cbc) {
  std::string line;
  while (std::getline(in, line)) {
    std::istringstream words(line);
    std::string name;
    double value = 0;
    if (cbc) {  // 'number name value cost', with '**' before it where a bound is broken
      words >> name;
      if (name == "**") words >> name;
    }
    words >> name >> value;
    answer.columns[name] = value;
  }
}

double cbc_seconds(const fs::path& log) {
  std::ifstream in(log);
  std::string line;
  double seconds = 0;
  const std::string label = "Total time (CPU seconds):";
  while (std::getline(in, line)) {
    if (line.rfind(label, 0) == 0) seconds = std::atof(line.c_str() + label.size());
  }
  return seconds;
}

// Gaps below 1 settle nothing among whole objectives, so it may stop there.
LevelAnswer run_cbc_with(const fs::path& mps, const char* options) {
  const fs::path answer_file = mps.string() + ".answer";
  const fs::path log = mps.string() + ".log";
  const std::string command = "cbc '" + mps.string() + "' " + options + " -sec " + std::to_string(kSecondsALevel) +
                              " -ratioGap 0 -allowableGap 0.999 -solve -solution '" + answer_file.string() + "' > '" +
                              log.string() + "' 2>&1";
  if (std::system(command.c_str()) != 0) return {};
  std::ifstream in(answer_file);
  std::string first;
  if (!std::getline(in, first)) return {};
  LevelAnswer answer;
  answer.seconds = cbc_seconds(log);
  if (first.rfind("Optimal", 0) == 0) {
    answer.status = Status::kOptimal;
  } else {
    const bool infeasible = first.find("nfeasible") != std::string::npos;
    answer.status = infeasible ? Status::kInfeasible : Status::kStopped;
  }
  const std::string label = "objective value";
  const std::size_t at = first.find(label);
  if (at != std::string::npos) answer.objective = std::atof(first.c_str() + at + label.size());
  read_columns(in, answer, true);
  return answer;
}

// Its preprocessing aborts on an assertion of its own now and then (2.10.8); without it the program is the same.
LevelAnswer run_cbc(const fs::path& mps) {
  const LevelAnswer answer = run_cbc_with(mps, "");
  return answer.status == Status::kNoAnswer ? run_cbc_with(mps, "-preprocess off") : answer;
}

LevelAnswer read_highs(const fs::path& lp) {
  std::ifstream in(lp.string() + ".answer");
  std::string first;
  if (!std::getline(in, first)) return {};
  std::istringstream words(first);
  std::string status;
  LevelAnswer answer;
  words >> status >> answer.objective >> answer.seconds;
  answer.status = status == "Optimal"                                                    ? Status::kOptimal
                  : status == "Infeasible" || status == "Primal_infeasible_or_unbounded" ? Status::kInfeasible
                                                                                         : Status::kStopped;
  read_columns(in, answer, false);
  return answer;
}

// Empty when the answer is what our solution says of this level.
std::string difference(const RefereeCase& one, const ExportTable& table, int level, const LevelAnswer& answer) {
  const std::string where = one.name + ", level " + std::to_string(level + 1) + ": ";
  if (answer.status == Status::kNoAnswer) return where + "the referee gave no answer";
  if (!one.solution) return answer.status == Status::kInfeasible ? "" : where + "the referee finds a session, we none";
  if (answer.status == Status::kInfeasible) return where + "the referee finds no session, we do";
  std::vector<double> values;
  for (const ExportColumn& column : table.columns) {
    const auto found = answer.columns.find(column.name);
    values.push_back(found == answer.columns.end() ? 0 : found->second);
  }
  const Evaluation evaluation = evaluate(*one.problem, choice_from_columns(table, values));
  if (!evaluation.feasible) return where + "the referee's session breaks a constraint in whole numbers";
  for (int l = 0; l <= level; ++l) {
    const std::int64_t theirs = level_of(evaluation.objective, l);
    const std::int64_t ours = level_of(one.solution->evaluation.objective, l);
    if (theirs == ours) continue;
    return where + "value " + std::to_string(theirs) + " of level " + std::to_string(l + 1) + ", ours " +
           std::to_string(ours);
  }
  if (std::llround(answer.objective) != level_of(evaluation.objective, level)) {
    return where + "the referee's own objective is " + std::to_string(answer.objective);
  }
  return "";
}

void write_texts(Referee referee, const RefereeCase& one, const ExportTable& table, std::size_t number,
                 const fs::path& folder) {
  const Objective optimum = one.solution ? one.solution->evaluation.objective : Objective{};
  for (int level = 0; level < levels_of(one); ++level) {
    const bool cbc = referee == Referee::kCbc;
    std::ofstream out(level_file(folder, number, level, cbc ? ".mps" : ".lp"));
    const LevelProgram program = level_program(table, level, optimum);
    out << (cbc ? mps_text(program) : lp_text(program));
  }
}

void run_highs(const std::vector<RefereeCase>& cases, const fs::path& folder) {
  const fs::path list = folder / "list.txt";
  {
    std::ofstream out(list);
    for (std::size_t number = 0; number < cases.size(); ++number) {
      for (int level = 0; level < levels_of(cases[number]); ++level) {
        out << level_file(folder, number, level, ".lp").string() << '\n';
      }
    }
  }
  const std::string command = "node '" LANEWORK_SOURCE_DIR "/tests/plan/referee_highs.mjs' '" + list.string() +
                              "' > '" + (folder / "highs.log").string() + "' 2>&1";
  // A failure shows as answers that are not there.
  if (std::system(command.c_str()) != 0) return;
}

}  // namespace

std::vector<Verdict> judge(Referee referee, const std::vector<RefereeCase>& cases, const fs::path& folder) {
  std::vector<ExportTable> tables;
  for (std::size_t number = 0; number < cases.size(); ++number) {
    tables.push_back(export_table(*cases[number].problem));
    write_texts(referee, cases[number], tables.back(), number, folder);
  }
  if (referee == Referee::kHighs) run_highs(cases, folder);
  std::vector<Verdict> verdicts;
  for (std::size_t number = 0; number < cases.size(); ++number) {
    Verdict verdict{true, true, "", 0};
    for (int level = 0; level < levels_of(cases[number]); ++level) {
      const bool cbc = referee == Referee::kCbc;
      const fs::path file = level_file(folder, number, level, cbc ? ".mps" : ".lp");
      const LevelAnswer answer = cbc ? run_cbc(file) : read_highs(file);
      verdict.seconds += answer.seconds;
      if (answer.status == Status::kStopped) {
        verdict.decided = false;
        continue;
      }
      const std::string differs = difference(cases[number], tables[number], level, answer);
      if (differs.empty()) continue;
      verdict.agrees = false;
      verdict.detail = differs + " (" + file.string() + ")";
      break;
    }
    verdicts.push_back(std::move(verdict));
  }
  return verdicts;
}

}  // namespace lanework::plan
