// Session problems drawn from a seed, small enough to enumerate or as large as asked.
#pragma once

#include <cstdint>

#include "core/plan/problem.h"

namespace lanework::plan {

struct RandomShape {
  int groups = 3;
  int drills_a_group = 2;
  int options_a_drill = 3;
  int budget_percent = 60;   // of the time all largest options would take
  int ceiling_percent = 60;  // of the loads all largest options would give
  bool pins = false;
  bool empty_groups = false;  // now and then a group without any drill
};

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  // Uniform in least .. most.
  int roll(int least, int most) {
    state_ += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    z ^= z >> 31;
    return least + static_cast<int>(z % static_cast<std::uint64_t>(most - least + 1));
  }

 private:
  std::uint64_t state_;
};

inline Problem random_problem(std::uint64_t seed, const RandomShape& shape) {
  Dice dice(seed);
  Problem problem;
  for (std::size_t from = 0; from < 3; ++from) {
    for (std::size_t to = 0; to < 3; ++to) problem.change[from][to] = from == to ? 0 : dice.roll(5, 30);
  }
  // Two groups of the first family, two of the second where there are enough, as in a real session.
  int all_seconds = 0;
  std::array<int, kLoads> all_loads{};
  for (int g = 0; g < shape.groups; ++g) {
    Group group;
    const int family = g < shape.groups - 2 || shape.groups < 4 ? g : g - (shape.groups - 2);
    group.family = static_cast<catalogue::Family>(family % catalogue::kFamilies);
    group.target = dice.roll(0, 6);
    group.weight = dice.roll(1, 8) * 4;
    problem.groups.push_back(group);
    const int drills = shape.empty_groups && dice.roll(0, 3) == 0 ? 0 : shape.drills_a_group;
    for (int d = 0; d < drills; ++d) {
      ProblemDrill drill;
      drill.drill = static_cast<int>(problem.drills.size());
      drill.group = g;
      drill.formation = static_cast<catalogue::Formation>(dice.roll(0, 2));
      const bool in_routine = dice.roll(0, 1) == 1;
      drill.routine_line = in_routine ? drill.drill : -1;
      drill.left_out = in_routine ? 8 : 0;
      int most_seconds = 0;
      std::array<int, kLoads> most_loads{};
      for (int o = 0; o < shape.options_a_drill; ++o) {
        Option option;
        option.rung = o % 2;
        option.dose = o / 2;
        option.seconds = dice.roll(20, 120);
        option.credits = dice.roll(1, 4);
        for (std::size_t l = 0; l < 3; ++l) option.loads[l] = dice.roll(0, 3) == 0 ? dice.roll(1, 12) : 0;
        option.loads[3] = in_routine ? 0 : dice.roll(0, 1);
        option.changes = in_routine ? 4 * dice.roll(0, 3) : 12;
        option.preference = dice.roll(0, 3);
        most_seconds = std::max(most_seconds, option.seconds);
        for (std::size_t l = 0; l < kLoads; ++l) most_loads[l] = std::max(most_loads[l], option.loads[l]);
        drill.options.push_back(option);
      }
      drill.pinned = shape.pins && dice.roll(0, 3) == 0;
      all_seconds += most_seconds;
      for (std::size_t l = 0; l < kLoads; ++l) all_loads[l] += most_loads[l];
      problem.drills.push_back(drill);
    }
  }
  for (int f = 0; f < catalogue::kFamilies; ++f) {
    FamilyDemand demand;
    demand.family = static_cast<catalogue::Family>(f);
    demand.required = dice.roll(0, 3) > 0;
    for (std::size_t g = 0; g < problem.groups.size(); ++g) {
      if (problem.groups[g].family == demand.family) demand.groups.push_back(static_cast<int>(g));
    }
    if (!demand.groups.empty()) problem.families.push_back(demand);
  }
  problem.budget = all_seconds * shape.budget_percent / 100;
  for (std::size_t l = 0; l < kLoads; ++l) problem.ceiling[l] = all_loads[l] * shape.ceiling_percent / 100;
  return problem;
}

}  // namespace lanework::plan
