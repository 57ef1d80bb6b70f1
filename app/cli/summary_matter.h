// From the answer of a block to the lead's summary, as a page and as text.
#pragma once

#include <string>

#include "app/cli/club_plan.h"
#include "app/draw/summary.h"

namespace lanework::cli {

// REQUIRES: plan.answer has at least one of the squads asked for.
draw::SummaryMatter summary_matter(const ClubPlan& plan);

// The same, with the answer's own sentences of what falls short and what minutes are worth under each squad.
std::string summary_text(const ClubPlan& plan);

}  // namespace lanework::cli
