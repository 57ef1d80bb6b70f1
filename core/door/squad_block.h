// The block of one squad of a club: from the club's files to the solver's problem, and back to words and numbers.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/block/build_problem.h"
#include "core/block/minute_prices.h"
#include "core/block/replan.h"
#include "core/block/solve.h"
#include "core/club/allocation.h"
#include "core/club/calendar.h"
#include "core/club/club.h"

namespace lanework::door {

// What there is to plan. The club outlives it.
struct SquadWishes {
  const club::Club* club = nullptr;
  const club::ClubSquad* squad = nullptr;
  std::vector<club::PlannedSlot> slots;  // as allocated
  std::vector<club::MissedSlot> missed;
  block::Outline outline;
};

// Faults: nobody there on a day, no age to go by.
Result<SquadWishes> wishes_of(const club::Club& club, const club::ClubSquad& squad, const club::Calendar& calendar);

struct SquadBlock {
  SquadWishes wishes;
  block::Built built;
  block::Answer answer;
  block::MinutePrices prices;                 // empty of a block that has begun
  std::optional<block::Replanned> replanned;  // of one that has begun and has sessions to come
};

// Counted work: the same block on any machine. A squad without any session has an empty problem and answer. Wishes of a
// block that has begun (roll_on.h) are planned on from there.
SquadBlock plan_block(SquadWishes wishes, const block::Work& work, plan::KernelWorkspace& workspace,
                      const block::Progress& progress = {});

// One drill of a planned session.
struct BlockItem {
  int drill = 0;  // index into the squad's catalogue
  int rung = 0;
  int dose = 0;
  int steps = 0;             // of five seconds; 0 on a match day
  std::optional<bool> done;  // of a session that is over: did it count?
};

// What became of a slot that is over; null of one to come.
const block::PastSession* past_of(const SquadBlock& block, std::size_t slot);

// The drills of a slot, in order; those of one that is over as they were planned. 'slot' is an index into wishes.slots.
std::vector<BlockItem> items_of(const SquadBlock& block, std::size_t slot);

// A family that falls short of its weekly target, in words: 'balance: 35 s of work short of 1 min 40 s in weeks 1-3'.
std::vector<std::string> shortfalls_of(const SquadBlock& block);

// What minutes on one day are worth, and where they would be missed least, each with the figure found by solving again:
// '5 min more on Tuesdays at 18:00: trunk 20 s more work a player a week; the block is worth 1.8 % more'.
std::vector<std::string> price_sentences(const SquadBlock& block);

// docs/formats/block.md.
Node to_node(const SquadBlock& block);
Node block_answer_node(const club::Club& club, const std::vector<SquadBlock>& squads);

}  // namespace lanework::door
