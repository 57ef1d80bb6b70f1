// What a squad's block does, evening by evening, recomputed: the base for every rule that spans evenings.
#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "core/check/block_answer.h"
#include "core/check/block_calendar.h"
#include "core/check/check_block.h"
#include "core/check/levels.h"
#include "core/check/matter.h"
#include "core/check/so_far.h"

namespace lanework::check {

// Points of docs/model/block.md.
inline constexpr std::int64_t kUncoveredPoints = 400;
inline constexpr std::int64_t kPinnedPoints = 4000;

struct EveningLedger {
  const Wish* wish = nullptr;             // never null
  const StatedSession* stated = nullptr;  // never null
  int age = 0;
  Band band;
  LoadSums loads;
  bool hard = false;
  std::int64_t fresh = 0;                       // drills never done before
  std::int64_t departure = 0;                   // points
  std::vector<std::string> done;                // drill ids
  std::set<std::string> open;                   // ids of the drills that could be done; not of a match day
  std::set<std::string> pinned;                 // likewise
  std::map<std::string, std::int64_t> credits;  // by family
  std::map<std::string, std::int64_t> work_ms;  // by family

  // Of a session that is over loads, credits, work and what was done are what really came about.
  bool over = false;
  std::set<std::string> planned;                 // drill ids
  std::map<std::string, std::int64_t> promised;  // credits as planned, by family

  [[nodiscard]] bool match_day() const { return wish->match_day; }
};

struct SquadLedger {
  std::vector<EveningLedger> evenings;  // by date and start; those the answer has
  // Nothing was left out of the ledger: every session is there, and all its drills exist.
  bool complete = true;
  std::vector<RoutineLine> routine;  // of the house
  bool free_composition = false;     // of the first set
  ChangeWeights weights;
  std::map<std::string, std::int64_t> taught;

  int begun = 0;  // spells that have begun, or are over: 0 of a block that has not

  // Is there anything to plan, apart from match days and what is over?
  [[nodiscard]] bool anything_planned() const;
  // Neither of the routine, nor ever taught, nor done on an evening of the ledger.
  [[nodiscard]] bool first_time(const Matter& matter, const std::string& drill) const;
};

// Faults of one squad. Rows of the model may be broken where an answer says that they cannot all hold.
struct SquadFaults {
  std::string squad;
  BlockViolations plain;
  BlockViolations rows;

  void add(std::string where, const char* rule, std::string found, std::string expected) {
    plain.push_back({rule, squad, std::move(where), std::move(found), std::move(expected)});
  }
  void add_row(std::string where, const char* rule, std::string found, std::string expected) {
    rows.push_back({rule, squad, std::move(where), std::move(found), std::move(expected)});
  }
};

// '12.5' for 12500 thousandths.
std::string in_units(std::int64_t thousandths);

// Seconds for drills and the changes between them. matter: of that evening, with the squad's own history.
std::int64_t budget_seconds(const Matter& matter);

// The rules on one session of the block; adds it to the ledger. matter: of that evening, drills told as often as in
// this week of the spell.
void judge_planned_session(const Matter& matter, std::int64_t budget_seconds, EveningLedger evening,
                           SquadLedger& ledger, SquadFaults& faults);
// Likewise for a match day, whose rules are those of a session on its own.
void judge_match_day(const Matter& matter, EveningLedger evening, SquadLedger& ledger, SquadFaults& faults);

// Likewise for a session that is over: only what is told of it is judged. told: null where nothing is.
void judge_past_session(const Matter& matter, const ToldSession* told, EveningLedger evening, SquadLedger& ledger,
                        SquadFaults& faults);
// Against the block of the answer before. ledger: complete.
void judge_standing(const StatedBlock& block, const StatedBlock& before, int weeks, const SquadLedger& ledger,
                    SquadFaults& faults);

// Rules on sets and swaps, on weeks and on pairs of sessions, and what the answer states of them.
void judge_sets(const Matter& matter, const StatedBlock& block, int weeks, const SquadLedger& ledger,
                SquadFaults& faults);
void judge_time(const Matter& matter, int weeks, const SquadLedger& ledger, SquadFaults& faults);
// Weeks, value, bound, gap and shortfalls as stated; gives the value.
std::int64_t judge_numbers(const Matter& matter, const StatedBlock& block, int weeks, const SquadLedger& ledger,
                           SquadFaults& faults);

}  // namespace lanework::check
