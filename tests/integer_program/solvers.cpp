#include "tests/integer_program/solvers.h"

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "core/integer_program/lp_text.h"
#include "core/integer_program/mps_text.h"

namespace lanework::integer_program {
namespace {

namespace fs = std::filesystem;

void read_columns(std::istream& in, SolverAnswer& answer, bool cbc) {
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

// The number after the last line that begins so.
std::optional<double> last_said(const fs::path& log, const std::string& label) {
  std::ifstream in(log);
  std::string line;
  std::optional<double> said;
  while (std::getline(in, line)) {
    if (line.rfind(label, 0) == 0) said = std::atof(line.c_str() + label.size());
  }
  return said;
}

SolverAnswer run_cbc_with(const fs::path& mps, const char* options, int seconds) {
  const fs::path answer_file = mps.string() + ".answer";
  const fs::path log = mps.string() + ".log";
  const std::string command = "cbc '" + mps.string() + "' " + options + " -sec " + std::to_string(seconds) +
                              " -ratioGap 0 -allowableGap 0.999 -solve -solution '" + answer_file.string() + "' > '" +
                              log.string() + "' 2>&1";
  if (std::system(command.c_str()) != 0) return {};
  std::ifstream in(answer_file);
  std::string first;
  if (!std::getline(in, first)) return {};
  SolverAnswer answer;
  answer.seconds = last_said(log, "Total time (CPU seconds):").value_or(0);
  const std::string label = "objective value";
  const std::size_t at = first.find(label);
  const bool infeasible = first.find("nfeasible") != std::string::npos;
  const bool solution = !infeasible && first.find("no integer solution") == std::string::npos;
  if (at != std::string::npos && solution) answer.objective = std::atof(first.c_str() + at + label.size());
  if (first.rfind("Optimal", 0) == 0) {
    answer.status = Status::kOptimal;
    answer.bound = answer.objective;
  } else {
    answer.status = infeasible ? Status::kInfeasible : Status::kStopped;
    answer.bound = last_said(log, "Lower bound:");
  }
  if (solution) read_columns(in, answer, true);
  return answer;
}

// Its preprocessing aborts on an assertion of its own now and then (2.10.8); without it the program is the same.
SolverAnswer run_cbc(const fs::path& mps, int seconds) {
  const SolverAnswer answer = run_cbc_with(mps, "", seconds);
  return answer.status == Status::kNoAnswer ? run_cbc_with(mps, "-preprocess off", seconds) : answer;
}

SolverAnswer read_highs(const fs::path& lp) {
  std::ifstream in(lp.string() + ".answer");
  std::string first;
  if (!std::getline(in, first)) return {};
  std::istringstream words(first);
  std::string status;
  std::string objective;
  std::string bound;
  SolverAnswer answer;
  words >> status >> objective >> bound >> answer.seconds;
  answer.status = status == "optimal"      ? Status::kOptimal
                  : status == "infeasible" ? Status::kInfeasible
                                           : Status::kStopped;
  if (objective != "-") answer.objective = std::atof(objective.c_str());
  if (bound.find("nf") == std::string::npos) answer.bound = std::atof(bound.c_str());
  read_columns(in, answer, false);
  std::ifstream bounds(lp.string() + ".bounds");
  for (SolverAnswer::BoundAt at{}; bounds >> at.seconds >> at.bound;) answer.bounds.push_back(at);
  return answer;
}

void run_highs(const std::vector<fs::path>& files, int seconds) {
  const fs::path folder = files.front().parent_path();
  {
    std::ofstream out(folder / "list.txt");
    for (const fs::path& file : files) out << file.string() << '\n';
  }
  const std::string command = "node '" LANEWORK_SOURCE_DIR "/tests/integer_program/highs.mjs' '" +
                              (folder / "list.txt").string() + "' " + std::to_string(seconds) + " > '" +
                              (folder / "highs.log").string() + "' 2>&1";
  // A failure shows as answers that are not there.
  if (std::system(command.c_str()) != 0) return;
}

}  // namespace

std::vector<double> SolverAnswer::values_of(const std::vector<Column>& columns_of_program) const {
  std::vector<double> values;
  for (const Column& column : columns_of_program) {
    const auto found = columns.find(column.name);
    values.push_back(found == columns.end() ? 0 : found->second);
  }
  return values;
}

fs::path write_text(Solver solver, const Program& program, const fs::path& stem) {
  const bool cbc = solver == Solver::kCbc;
  const fs::path file = stem.string() + (cbc ? ".mps" : ".lp");
  std::ofstream out(file);
  out << (cbc ? mps_text(program) : lp_text(program));
  return file;
}

std::vector<SolverAnswer> solve_files(Solver solver, const std::vector<fs::path>& files, int seconds) {
  if (files.empty()) return {};
  if (solver == Solver::kHighs) run_highs(files, seconds);
  std::vector<SolverAnswer> answers;
  for (const fs::path& file : files) {
    answers.push_back(solver == Solver::kCbc ? run_cbc(file, seconds) : read_highs(file));
  }
  return answers;
}

}  // namespace lanework::integer_program
