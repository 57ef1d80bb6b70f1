#include "benchmarks/block/peers.h"

#include <stdlib.h>

#include <algorithm>
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

// The work of about a second: splits whatever the gap, and weeks of sets that stay alone to the last point.
block::Work second_of_work() {
  block::Work work;
  work.near = work.far = work.farther = 0;
  work.splits = 20;
  work.more_splits = work.last_splits = 0;
  work.thorough.worth_splitting = 1;
  return work;
}

// What HiGHS has proven in as much time as ours took, and when it has proven as much.
void print_equal_time(const std::vector<SolvedSquad>& squads, const Peer& highs) {
  std::printf("HiGHS in equal time:\n  squad    ours      time   its bound then   ours reached after\n");
  int no_worse = 0;
  std::vector<double> reached;
  for (std::size_t i = 0; i < squads.size(); ++i) {
    const block::Points ours = bound_of(squads[i].answer);
    double then = INFINITY;
    double after = INFINITY;
    for (const SolverAnswer::BoundAt& at : highs.answers[i].bounds) {
      const double bound = std::floor(-at.bound + 1e-6);
      if (at.seconds <= squads[i].solve_seconds) then = bound;
      if (bound <= static_cast<double>(ours)) after = std::min(after, at.seconds);
    }
    no_worse += static_cast<double>(ours) <= then ? 1 : 0;
    reached.push_back(after);
    std::printf("  %5zu %8lld %6.2f s %15.0f %16.1f s\n", i + 1, static_cast<long long>(ours), squads[i].solve_seconds,
                then, after);
  }
  std::sort(reached.begin(), reached.end());
  std::printf("  our bound no worse on %d of %zu; HiGHS comes to it after %.1f s, the median\n", no_worse,
              squads.size(), reached[reached.size() / 2]);
}

}  // namespace

bool compare_with_solvers(int count, int seconds) {
  std::string folder = (fs::temp_directory_path() / "lanework-bench-XXXXXX").string();
  if (mkdtemp(folder.data()) == nullptr) return false;
  std::vector<SolvedSquad> squads;
  double longest = 0;
  std::vector<block::ExportTable> tables;
  std::vector<fs::path> mps;
  std::vector<fs::path> lp;
  for (int i = 0; i < count; ++i) {
    squads.push_back(solve_squad(static_cast<std::uint64_t>(i) + 1, second_of_work()));
    longest = std::max(longest, squads.back().solve_seconds);
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
  print_aim("longest time of ours", longest, 1, "s");
  print_equal_time(squads, highs);
  if (sound) fs::remove_all(folder);
  return sound;
}

}  // namespace lanework::bench
