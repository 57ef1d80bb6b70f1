// Who has which lanes and what of the club's kit. The lanes are those that the answer states; that they exist, belong
// to one squad at a time and are as many as docs/formats/club.md gives is judged here. Kit is not stated: it is shared
// out again.
#pragma once

#include <vector>

#include "core/check/block_answer.h"
#include "core/check/block_calendar.h"
#include "core/check/check_block.h"
#include "core/check/club_matter.h"

namespace lanework::check {

// What a wish got.
struct Share {
  bool takes_place = true;  // false: every lane was taken
  int lanes = 0;            // of the strip; all of it elsewhere
  Kit kit;
};

// By squad of the club and wish of its calendar. Squads that the answer leaves out take part: they hold lanes and kit.
using Sharing = std::vector<std::vector<Share>>;

Sharing share_out(const ClubMatter& club, const std::vector<SquadCalendar>& calendars, const StatedAnswer& answer,
                  BlockViolations& violations);

// The session an answer states for a wish; null where there is none.
const StatedSession* find_session(const StatedBlock& block, const Wish& wish);

}  // namespace lanework::check
