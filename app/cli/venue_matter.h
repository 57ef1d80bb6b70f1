// The action plan of an evening's venue, from its file to the second side of the card.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/draw/card.h"
#include "core/base/date.h"
#include "core/base/result.h"
#include "core/care/venue/venue_plan.h"
#include "core/session/strip.h"

namespace lanework::cli {

Result<care::VenuePlan> venue_plan_at(const std::string& path);

// Of the file that the strip names; empty where it names none.
Result<std::optional<care::VenuePlan>> venue_plan_of(const session::Strip& strip);

// 'Plan incomplete: no defibrillator named, last rehearsal over a year ago.'; empty when nothing is missing.
std::string lacks_in_words(const care::VenuePlan& plan, Date day);

draw::ActionPlanMatter action_plan_matter(const care::VenuePlan& plan, Date day);

// Signs that are referred, and to whom; docs/care/venue.md says where they come from.
const std::vector<draw::SaidTo>& danger_signs();

}  // namespace lanework::cli
