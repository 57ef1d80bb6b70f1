// The answer of a block that has begun, as the plan that stands.
#pragma once

#include "app/read/block_answer.h"
#include "core/base/result.h"
#include "core/block/rolling.h"
#include "core/club/club.h"
#include "core/loop/sessions_so_far.h"

namespace lanework::planning {

// Faults: of another block, of a squad without an answer, names of drills, rungs, doses or families that there are not,
// spells and weeks that do not come out even.
Result<block::Standing> standing_block(const read::BlockAnswer& answer, const std::string& file, const club::Club& club,
                                       const club::ClubSquad& squad);

// By the answer's own words: whether that drill stands in that session of the squad. Both outlive what is returned.
loop::WasPlanned planned_in(const read::BlockAnswer& answer, const club::Club& club);

}  // namespace lanework::planning
