// The session problem: what the kernel solves, the exports write and the brute force enumerates.
// Maths with the same names: docs/model/session.md. Everything is a whole number.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "core/catalogue/words.h"
#include "core/plan/objective.h"
#include "core/session/load.h"

namespace lanework::plan {

// Capped resources of a session.
using session::kLoads;
using session::Load;
const char* load_words(Load load);  // 'contacts', 'eccentric repetitions', ...

// One way of doing a drill: a rung and a dose.
struct Option {
  int rung = 0;
  int dose = 0;
  int seconds = 0;  // telling and doing, median, rounded up
  int credits = 0;  // quarter-targets of the drill's own family, at least 1
  std::array<int, kLoads> loads{};
  std::int64_t changes = 0;  // weighted departure from the routine when taken
  std::int64_t preference = 0;
};

// Drills stand in canonical order: phase, family rank, routine position, id.
struct ProblemDrill {
  int drill = 0;  // index into Catalogue::drills
  int group = 0;
  catalogue::Formation formation = catalogue::Formation::kSpread;
  bool pinned = false;          // must be taken
  int routine_line = -1;        // position in the routine, -1 when not of it
  std::int64_t left_out = 0;    // weighted departure when not taken
  std::vector<Option> options;  // ascending by rung, then dose; may be empty for a barred routine drill
};

// One family in one phase.
struct Group {
  catalogue::Family family = catalogue::Family::kPulseRaising;
  catalogue::Phase phase = catalogue::Phase::kStart;
  int target = 0;           // quarter-targets: the routine's own doses
  std::int64_t weight = 0;  // of one missing quarter in the first half of the shortfall
};

struct FamilyDemand {
  catalogue::Family family = catalogue::Family::kPulseRaising;
  bool required = false;
  std::vector<int> groups;  // one or two, ascending
};

struct Problem {
  int budget = 0;     // seconds for drills and changes between them, gathering and breaks taken off
  int gathering = 0;  // seconds, already taken off
  int breaks = 0;     // seconds, already taken off
  std::array<std::array<int, catalogue::kFormations>, catalogue::kFormations> change{};  // seconds, [from][to]
  std::array<int, kLoads> ceiling{};
  std::vector<Group> groups;  // canonical order
  std::vector<FamilyDemand> families;
  std::vector<ProblemDrill> drills;  // canonical order; drills of a group are contiguous
};

// Weighted quarter-targets for 'credits' reached in a group: the first half of the shortfall counts once,
// the second twice.
std::int64_t shortfall_cost(const Group& group, int credits);

// A choice: for each problem drill the position of its option, or -1.
using Choice = std::vector<int>;

struct Evaluation {
  bool feasible = false;
  int seconds = 0;  // drills and changes
  std::array<int, kLoads> loads{};
  Objective objective;
};

// Straight from the definitions, for brute force, referees and asserts.
Evaluation evaluate(const Problem& problem, const Choice& choice);

}  // namespace lanework::plan
