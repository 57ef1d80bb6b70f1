#include "benchmarks/block/squads.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>

#include "app/cli/share_out.h"
#include "benchmarks/plan/timing.h"
#include "tests/block/drawn_squads.h"

namespace lanework::bench {
namespace {

double process_seconds() {
  timespec now{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

}  // namespace

block::Outline squad_of_the_set(std::uint64_t seed) { return block::draw_squad(seed, {.sessions_a_week = 3}); }

SolvedSquad solve_squad(std::uint64_t seed, const block::Work& work) {
  plan::KernelWorkspace workspace;
  SolvedSquad out;
  const double from = thread_seconds();
  out.built = block::build_problem(squad_of_the_set(seed), workspace);
  const double built = thread_seconds();
  out.answer = block::solve(out.built.problem, work);
  out.build_seconds = built - from;
  out.solve_seconds = thread_seconds() - built;
  return out;
}

Cost solve_set(int count, int threads, const block::Work& work,
               const std::function<void(std::size_t, SolvedSquad)>& done) {
  squad_of_the_set(1);  // the catalogue is read once, before the clocks start
  const double processor = process_seconds();
  const auto wall = std::chrono::steady_clock::now();
  cli::share_out(static_cast<std::size_t>(count), static_cast<unsigned>(threads), [&]() -> cli::Worker {
    return [&](std::size_t i) { done(i, solve_squad(static_cast<std::uint64_t>(i) + 1, work)); };
  });
  return {std::chrono::duration<double>(std::chrono::steady_clock::now() - wall).count(),
          process_seconds() - processor};
}

void print_aim(const char* what, double found, double aim, const char* unit) {
  std::printf("  %s %.2f %s, aim %.2f: %s\n", what, found, unit, aim, found <= aim ? "met" : "MISSED");
}

}  // namespace lanework::bench
