// The block of one squad from what the club's folder says and what the ledger knows: planned anew before it begins, and
// planned on, with as few changes as what happened asks for, from then on. So what a coach enters on Tuesday is in the
// plan for Thursday without anybody writing a spreadsheet.
#pragma once

#include <string>
#include <vector>

#include "core/base/date.h"
#include "core/base/result.h"
#include "core/block/solve.h"
#include "core/ledger/fold.h"

namespace lanework::planning {

struct PlanningFiles {
  std::string club;       // the club's folder (docs/formats/club.md)
  std::string catalogue;  // the shipped one
};

// What is known, and of when.
struct Known {
  ledger::State state;
  Node care;  // ledger::care_document of it
};

struct SquadPlan {
  std::string text;                  // as 'lanework block --json' answers for this squad
  std::vector<std::string> remarks;  // entries that change no plan, a sentence each
};

// standing: the text of the plan that stands, or empty; one of another block is no plan of this one. Faults: of the
// folder, no such squad, a day that is over on which plan and calendar do not agree.
Result<SquadPlan> plan_squad(const PlanningFiles& files, const std::string& squad, const Known& known, Date today,
                             const std::string& standing, const block::Work& work = {});

}  // namespace lanework::planning
