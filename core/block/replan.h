// The rest of a block that has begun, planned again with as few changes as what happened asks for: weeks that nothing
// touched stay as they stand, and in the others every change from the plan that stands has a price.
// docs/model/rolling.md.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "core/block/build_problem.h"
#include "core/block/solve.h"

namespace lanework::block {

// Why a session may have to change.
enum class Cause {
  kNewSession,   // it does not stand in the plan
  kSlotChanged,  // longer or shorter, or its budget is
  kMatchMoved,   // days to the match, where that matters
  kTurnoutChanged,
  kDrillClosed,    // a drill of it cannot be done any more, or not so
  kRungConfirmed,  // the lead has confirmed another rung for a drill of it
  kDrillFixed,     // the lead has fixed a drill that its set did not have
  kTimesChanged,   // a drill takes longer or shorter: it is still new, or the strip, the pace are others
  kTooMuch,        // what stands would break a ceiling of the week or of the session
  kWeekBehind,     // sessions of its week gave less than planned, and a target suffers
  kWeekChanged,    // another session of its week has changed
  kTargetRaised,   // weeks before it owe more than the plan knew
};

// Drills of the problem; the same in every set to come.
struct SetSwap {
  int leaves;  // -1: the one that comes in has a place of its own
  int comes_in;
  bool fixed;  // by the lead; else no session to come is open to the one that leaves
  bool operator==(const SetSwap&) const = default;
};

struct Replanned {
  Answer answer;                           // bound: of all plans with these sets
  std::vector<std::vector<Cause>> causes;  // by session of the problem, each once; empty: it stands untouched
  Plan standing;                           // the plan that stood, as far as it can still be done
  std::vector<SetSwap> swapped;
};

// REQUIRES: outline.rolling, and 'built' made from it with at least one session.
Replanned replan(const Outline& outline, const Built& built, const WeekEffort& effort);

}  // namespace lanework::block
