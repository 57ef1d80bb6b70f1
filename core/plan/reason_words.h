// Reasons, cures, gains and ways out in English: the one place where they become sentences.
#pragma once

#include <string>

#include "core/plan/plan_session.h"

namespace lanework::plan {

std::string words(const session::Bar& bar);                                               // 'it needs a wall'
std::string words(const session::Reason& reason, const catalogue::Catalogue& catalogue);  // 'covers Trunk'
std::string words(const Cure& cure,
                  const catalogue::Catalogue& catalogue);  // 'with 1 min 20 s more it would be covered'
std::string words(const MinutePrice& price, const catalogue::Catalogue& catalogue);  // 'Trunk covered, Squat 2 × 10'
std::string words(const Demand& demand,
                  const catalogue::Catalogue& catalogue);  // 'Wall sit is pinned, but it needs a wall'
std::string words(const std::vector<WayOut>& ways,
                  const catalogue::Catalogue& catalogue);  // 'a slot of 12 min would do; ...'

}  // namespace lanework::plan
