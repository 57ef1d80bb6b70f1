// The restrictions document (docs/formats/squad.md) to Restrictions.
#pragma once

#include <string>
#include <vector>

#include "core/base/document.h"
#include "core/base/result.h"
#include "core/people/player.h"

namespace lanework::people {

// players: every id of the club's roster; squads: every squad name its players carry, and tonight's. A restriction for
// somebody who is not there is a fault, since it would silently protect nobody. All faults are collected.
Result<Restrictions> read_restrictions(const Document& document, const std::vector<std::string>& players,
                                       const std::vector<std::string>& squads);

}  // namespace lanework::people
