// A session: the answer of the planner, the question of the checker, the matter of the card.
#pragma once

#include <vector>

#include "core/base/units.h"
#include "core/session/reason.h"

namespace lanework::session {

// One drill of the session, by position in the catalogue.
struct Item {
  int drill;
  int rung;
  int dose;
  Seconds change{};  // walking and regrouping before it, from the formation matrix
  Seconds takes{};   // telling and doing, median, rounded up
  Seconds starts{};  // seconds after the session's start, telling included
  Seconds rest{};    // breaks before it, before the change
};

// A departure from the routine.
enum class ChangeKind { kSmallerDose, kLargerDose, kEasierRung, kLeftOut, kNewDrill, kHarderRung };
struct Change {
  ChangeKind kind;
  int drill;
  int from = 0;  // dose or rung index before
  int to = 0;    // dose or rung index now
  Reason why;
};

struct Session {
  std::vector<Item> items;
  std::vector<Change> changes;
  Seconds planned{};  // sum of rest, change and takes
};

}  // namespace lanework::session
