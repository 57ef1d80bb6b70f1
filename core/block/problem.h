// The block problem of one squad: three to eight weeks of sessions, planned together.
// Maths with the same names: docs/model/block.md. Everything is a whole number: times are steps of five
// seconds, loads thousandths (hard running: millimetres), credits quarter-targets, values points.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "core/block/constants.h"
#include "core/catalogue/words.h"

namespace lanework::block {

// Contacts, eccentric repetitions, hard running: the first three of plan::Load.
inline constexpr std::size_t kLoads = 3;
using Loads = std::array<int, kLoads>;

// Prices, and the values of kernels and bounds: this many to a point.
inline constexpr int kFine = 256;

// Quarter-credits beyond the target that are still worth something, for the lesser points; after that nothing.
inline int counted_beyond(int target) { return target * kCountedBeyondPercent / 100; }

inline constexpr int kAnyNumber = 1'000;

// One way of doing a drill in a session: a dose, on the rung of the week.
struct Option {
  int rung = 0;
  int dose = 0;
  int steps = 0;
  int credits = 0;
  Loads loads{};
  Points departure = 0;  // from the routine's own dose
};

// What the sessions of one pattern share: place, turnout, days to the match, and how well drills are known.
struct Kind {
  std::array<std::array<int, catalogue::kFormations>, catalogue::kFormations> change{};  // steps, [from][to]
  std::vector<std::vector<Option>> options;  // by drill of the problem; empty where it is not open
};

struct Session {
  int day = 0;  // days after the first Monday of the block
  int week = 0;
  int spell = 0;
  int kind = 0;
  int budget = 0;  // steps, gathering and margin taken off
  Loads ceiling{};
  Loads hard{};  // a session that uses more than this of contacts or eccentric work is hard
  // Bounds only: it can have no more drills than this that were never done before the block, since they come in slowly.
  int unknown = kAnyNumber;
};

struct Drill {
  int drill = 0;  // index into Catalogue::drills
  int group = 0;
  catalogue::Formation formation = catalogue::Formation::kSpread;
  bool current = false;  // of the set that stands now
  bool unknown = false;  // the squad has never done it
  Points left_out = 0;   // lost for every session of a spell whose set has it, is open to it, and goes without
  unsigned must = 0;     // bit p: it is of the set of spell p, as the lead or a rule has fixed
};

inline bool must_be(const Drill& drill, std::size_t spell) { return (drill.must >> spell & 1U) != 0; }

// One family in one phase, in canonical order.
struct Group {
  int family = 0;  // position in Problem::families
  catalogue::Phase phase = catalogue::Phase::kStart;
};

struct Family {
  catalogue::Family family = catalogue::Family::kPulseRaising;
  Points weight = 0;
  bool required = false;
  int drills = 0;  // of it in every set: a swap takes one out and brings one in
  std::vector<int> groups;
};

struct Week {
  int spell = 0;
  Loads ceiling{};            // what is left of the week's ceilings after the fixed sessions
  std::vector<int> fixed{};   // credits of the fixed sessions, by family
  std::vector<int> target{};  // quarter-credits that the week should give, by family
  int begun = 0;              // drills done for the first time in its fixed sessions
};

struct Problem {
  std::vector<Session> sessions;  // by day
  std::vector<Kind> kinds;
  std::vector<Drill> drills;  // canonical order; drills of a group are contiguous
  std::vector<Group> groups;
  std::vector<Family> families;  // by rank
  std::vector<Week> weeks;
  int spells = 0;
  std::vector<std::pair<int, int>> close;  // sessions less than 48 h apart: at most one of them is hard
  int begun = 0;                           // spells whose sets stand: limits on swaps no longer hold for them
  int first_swaps = 0;                     // drills that may come in at the start of the first spell
  int most_swaps = 0;                      // and at the start of each later one
  int least_swaps = 0;                     // that must, from the second spell on
  int most_new_in_session = 0;             // drills never done before
  int most_new_in_week = 0;
  Points swap = 0;       // lost for every drill that comes in
  Points uncovered = 0;  // lost for every required family a session goes without
};

// The sets of the spells and, for each session and drill, the position of its option, or -1.
using Sets = std::vector<std::vector<char>>;  // [spell][drill]
struct Plan {
  Sets sets;
  std::vector<std::vector<int>> choice;  // [session][drill]
  bool operator==(const Plan&) const = default;
};

// Points of 'credits' of a family in a week that should give 'target'.
Points worth(const Family& family, int target, int credits);

struct Evaluation {
  Points value = 0;
  std::vector<std::string> broken;        // the constraints that do not hold, in the words of docs/model/block.md
  std::vector<std::vector<int>> credits;  // [week][family], fixed ones included
  std::vector<Loads> week_loads;
  std::vector<int> session_steps;
  std::vector<Loads> session_loads;
};

// Straight from the definitions, for tests, enumeration and asserts.
Evaluation evaluate(const Problem& problem, const Plan& plan);

bool is_hard(const Session& session, const Loads& loads);

// Does the spell have a session?
bool has_session(const Problem& problem, std::size_t spell);

// Is a session of the spell open to the drill?
bool is_open(const Problem& problem, std::size_t spell, std::size_t drill);

// Drills that may come in at the start of a spell.
inline int most_swaps_of(const Problem& problem, std::size_t spell) {
  return spell == 0 ? problem.first_swaps : problem.most_swaps;
}

// Brings a drill into the set of a spell. Where its family has all its places taken another leaves: one that is not
// fixed, rather one that the spell has no session open to, rather one that is not of the current set, rather a late
// one. Its position, or -1.
int bring_in(const Problem& problem, std::size_t spell, std::vector<char>& set, std::size_t drill);

// The plan that keeps the current set, but for what is fixed, and does nothing: always feasible where no swap is due.
Plan empty_plan(const Problem& problem);

}  // namespace lanework::block
