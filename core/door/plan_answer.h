// The answer to a plan request: the plan with its times, as values and as JSON (docs/formats/door.md).
// Nothing in it names a player.
#pragma once

#include "core/clock/clock.h"
#include "core/door/evening_request.h"
#include "core/plan/plan_session.h"

namespace lanework::door {

struct PlanAnswer {
  plan::Plan plan;
  clock::SessionTime time;  // empty lines when infeasible
};

// Where the finish and its spread come from: the formulas of docs/model/clock.md, at once, or simulated evenings.
enum class Spread { kFormula, kSimulated };

PlanAnswer answer_plan(const EveningMatter& matter, plan::KernelWorkspace& workspace,
                       Spread spread = Spread::kSimulated);
Node to_node(const PlanAnswer& answer, const EveningMatter& matter);

// 'smaller-dose', 'easier-rung', ...
const char* change_word(session::ChangeKind kind);
// What stood before and what stands now, in words; empty where there is none.
std::string change_from(const session::Change& change, const catalogue::Catalogue& catalogue);
std::string change_to(const session::Change& change, const catalogue::Catalogue& catalogue);
// What changed, without the reason: 'Side plank: 20 s a side instead of 2 × 20 s a side'.
std::string change_sentence(const session::Change& change, const catalogue::Catalogue& catalogue);
// Changes that share a reason stand under it, in the order they were made.
struct ReasonedChanges {
  session::Reason reason;
  std::string why;                 // 'the routine needs 18 min 29 s, the slot is 15 min'
  std::vector<std::string> lines;  // change_sentence of each
};
std::vector<ReasonedChanges> changes_by_reason(const plan::Plan& plan, const EveningMatter& matter);
// Clock time so many seconds after the start, rounded up to the minute.
std::string clock_time(const session::Evening& evening, Seconds after_start);

}  // namespace lanework::door
