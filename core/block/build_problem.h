// From an outline to the block problem. Which drills enter, on which rungs and doses, how long they take and
// what they count is taken from the session planner; docs/model/block.md says what is added.
#pragma once

#include "core/block/outline.h"
#include "core/block/problem.h"
#include "core/plan/kernel.h"
#include "core/session/session.h"

namespace lanework::block {

// A session planned on its own before the block is: a match day's.
struct FixedSession {
  std::size_t evening = 0;  // index into Outline::evenings
  session::Session session;
};

struct Built {
  Problem problem;
  std::vector<std::size_t> evening_of;  // by session of the problem: index into Outline::evenings
  std::vector<FixedSession> fixed;
};

// Drills never done before that may be begun in one week.
int most_new_in_week(const catalogue::Limits& limits);

// REQUIRES: an outline whose evenings lie inside its weeks.
Built build_problem(const Outline& outline, plan::KernelWorkspace& workspace);

}  // namespace lanework::block
