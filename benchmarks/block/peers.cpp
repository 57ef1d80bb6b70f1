#include "benchmarks/block/peers.h"

#include <stdlib.h>

#include <cmath>
#include <cstdio>
#include <thread>

#include "benchmarks/block/squads.h"
#include "core/block/export_rows.h"
#include "tests/integer_program/solvers.h"

namespace lanework::bench {
namespace {

namespace fs = std::filesystem;
using integer_program::Solver;
using integer_program::SolverAnswer;

struct Peer {
  const char* name;
  std::vector<SolverAnswer> answers;
  int no_worse_value = 0;
  int no_worse_bound = 0;
  int lost = 0;
};

// Whole numbers bound whole values.
block::Points bound_of(const block::Answer& answer) {
  return static_cast<block::Points>(std::floor(static_cast<double>(answer.bound_fine) / block::kFine));
}

double percent_of(double bound, double value) { return bound <= 0 ? 0 : 100 * (bound - value) / bound; }

// One row of the table. False: the solver contradicts us.
bool print_row(const SolvedSquad& ours, const block::ExportTable& table, Peer& peer, std::size_t squad) {
  const SolverAnswer& theirs = peer.answers[squad];
  const block::Points our_bound = bound_of(ours.answer);
  const bool bounded = theirs.bound && std::abs(*theirs.bound) < 1e20;
  const double bound = bounded ? std::floor(-*theirs.bound + 1e-6) : INFINITY;
  double value = -INFINITY;
  bool sound = true;
  if (theirs.objective) {
    const block::Plan plan = block::plan_from_columns(table, theirs.values_of(table.program.columns));
    const block::Evaluation evaluation = block::evaluate(ours.built.problem, plan);
    if (evaluation.broken.empty()) value = static_cast<double>(evaluation.value);
    // A solver that was stopped may not have filled what earns; it must never claim more than its plan is worth.
    const block::Points claimed = std::llround(-*theirs.objective);
    const bool optimal = theirs.status == integer_program::Status::kOptimal;
    sound = evaluation.broken.empty() && (optimal ? claimed == evaluation.value : claimed <= evaluation.value);
    if (!sound) {
      std::printf("  squad %zu, %s: its objective %.3f, its plan %lld in whole numbers%s%s\n", squad + 1, peer.name,
                  -*theirs.objective, static_cast<long long>(evaluation.value),
                  evaluation.broken.empty() ? "" : ", breaks ",
                  evaluation.broken.empty() ? "" : evaluation.broken.front().c_str());
    }
  }
  const bool value_held = static_cast<double>(ours.answer.value) >= value;
  const bool bound_held = static_cast<double>(our_bound) <= bound;
  const bool contradicts = value > static_cast<double>(our_bound) || bound < static_cast<double>(ours.answer.value);
  peer.no_worse_value += value_held ? 1 : 0;
  peer.no_worse_bound += bound_held ? 1 : 0;
  peer.lost += value_held && bound_held ? 0 : 1;
  std::printf("  %5zu %-6s %8lld %8lld %5.2f %% %6.2f s %9.0f %9.0f %6.2f %% %7.1f s%s%s%s\n", squad + 1, peer.name,
              static_cast<long long>(ours.answer.value), static_cast<long long>(our_bound),
              percent_of(static_cast<double>(our_bound), static_cast<double>(ours.answer.value)), ours.solve_seconds,
              value, bound, percent_of(bound, value), theirs.seconds, value_held ? "" : "  LOST: value",
              bound_held ? "" : "  LOST: bound", contradicts ? "  CONTRADICTION" : "");
  return sound && !contradicts;
}

}  // namespace

bool compare_with_solvers(int count, int seconds) {
  std::string folder = (fs::temp_directory_path() / "lanework-bench-XXXXXX").string();
  if (mkdtemp(folder.data()) == nullptr) return false;
  std::vector<SolvedSquad> squads;
  std::vector<block::ExportTable> tables;
  std::vector<fs::path> mps;
  std::vector<fs::path> lp;
  for (int i = 0; i < count; ++i) {
    squads.push_back(solve_squad(static_cast<std::uint64_t>(i) + 1, {}));
    tables.push_back(block::export_table(squads.back().built.problem));
    const fs::path stem = fs::path(folder) / ("squad" + std::to_string(i + 1));
    mps.push_back(write_text(Solver::kCbc, tables.back().program, stem));
    lp.push_back(write_text(Solver::kHighs, tables.back().program, stem));
  }
  std::printf(
      "The exported rows of %d squads, %d s each: CBC and HiGHS (WebAssembly in Node); the first has %zu columns, %zu "
      "rows\n",
      count, seconds, tables.front().program.columns.size(), tables.front().program.rows.size());
  Peer cbc{"CBC", {}};
  Peer highs{"HiGHS", {}};
  std::thread other([&] { highs.answers = solve_files(Solver::kHighs, lp, seconds); });
  cbc.answers = solve_files(Solver::kCbc, mps, seconds);
  other.join();
  std::printf("  squad against    value    bound     gap     time   their value   bound      gap      time\n");
  bool sound = true;
  for (std::size_t i = 0; i < squads.size(); ++i) {
    for (Peer* peer : {&cbc, &highs}) sound = print_row(squads[i], tables[i], *peer, i) && sound;
  }
  for (const Peer* peer : {&cbc, &highs}) {
    std::printf("  %s: our value no worse on %d, our bound no worse on %d, rows lost %d of %d: %s\n", peer->name,
                peer->no_worse_value, peer->no_worse_bound, peer->lost, count, peer->lost == 0 ? "met" : "MISSED");
  }
  if (sound) fs::remove_all(folder);
  return sound;
}

}  // namespace lanework::bench
