// The fixed set of squads that the block planner is measured on, and how a list of them is solved.
#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/block/build_problem.h"
#include "core/block/solve.h"

namespace lanework::bench {

// Squad 'seed' of the set: six weeks, three sessions a week, the whole catalogue.
block::Outline squad_of_the_set(std::uint64_t seed);

struct SolvedSquad {
  block::Built built;
  block::Answer answer;
  double build_seconds = 0;  // processor time of the thread, as the next
  double solve_seconds = 0;
};

SolvedSquad solve_squad(std::uint64_t seed, const block::Work& work);

struct Cost {
  double wall_seconds = 0;
  double processor_seconds = 0;  // of all threads
};

// Squads 1 .. count, one a thread; each is handed on when it is done and then dropped, by the thread that solved it.
Cost solve_set(int count, int threads, const block::Work& work,
               const std::function<void(std::size_t, SolvedSquad)>& done);

// 'what 9.3 s, aim 10 s: met'
void print_aim(const char* what, double found, double aim, const char* unit);

}  // namespace lanework::bench
