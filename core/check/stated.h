// What an answer states, held against what was recomputed: words of items, times, levels, changes, loads.
#pragma once

#include <vector>

#include "core/base/document.h"
#include "core/check/check_session.h"
#include "core/check/judge.h"
#include "core/check/matter.h"

namespace lanework::check {

// The items an answer names; a violation 'answer-form' for each that cannot be read.
std::vector<NamedItem> named_items(const Node& answer, std::vector<Violation>& violations);

// Outcome, slot, turnout, gathering: stated by every answer.
void judge_frame(const Node& answer, const Matter& matter, const Report& report, std::vector<Violation>& violations);

// The rest, of an answer with a session. REQUIRES: selection holds every item the answer names.
void judge_stated(const Node& answer, const Selection& selection, const Matter& matter, const Report& report,
                  std::vector<Violation>& violations);

}  // namespace lanework::check
