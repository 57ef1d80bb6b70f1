// The hard rules, for an answer and for a plan edited by hand alike: what can be done tonight, order, pins,
// the clock, ceilings.
#pragma once

#include <string>
#include <vector>

#include "core/check/check_session.h"
#include "core/check/matter.h"
#include "core/check/selection.h"

namespace lanework::check {

// Drill, rung and dose by the names of a file; a violation for what does not exist.
struct NamedItem {
  std::string where;
  std::string drill;
  std::string rung;
  Step step;
};
Selection existing(const std::vector<NamedItem>& items, const Matter& matter, std::vector<Violation>& violations);

// Adds a violation for every hard rule that is broken. only_offered: may only stand what the planner may take.
void judge(const Selection& selection, const Matter& matter, bool only_offered, std::vector<Violation>& violations);

// Fills everything of the report but its violations.
void recompute(const Selection& selection, const Matter& matter, Report& report);

}  // namespace lanework::check
