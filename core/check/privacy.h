// No name, id, mass or restriction of a player may stand in an answer that goes to a coach.
#pragma once

#include <vector>

#include "core/base/document.h"
#include "core/check/check_session.h"
#include "core/check/matter.h"

namespace lanework::check {

// Words that the catalogue itself uses ('bridge') are no sign of a player of that name.
void judge_privacy(const Node& answer, const Node& catalogue, const Secrets& secrets,
                   std::vector<Violation>& violations);

}  // namespace lanework::check
