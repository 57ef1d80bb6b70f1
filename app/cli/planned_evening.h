// One slot of a squad's calendar as the evening that a card and a slip are made of.
#pragma once

#include "app/cli/club_plan.h"
#include "app/draw/card.h"
#include "core/door/evening_request.h"

namespace lanework::cli {

// Where the block has the slot's session, its drills stand in for the routine, so that the session planner makes them
// exact in seconds, and what earlier sessions of the block have told is known; else the house routine (on a match day
// the match-day routine). Faults: nobody there, no age to go by.
Result<door::EveningMatter> evening_matter(const ClubPlan& plan, const club::ClubSquad& squad,
                                           const club::PlannedSlot& slot);

// What comes in and goes out with a spell, on the cards of its first week: a mark on each drill that is new, and one
// line. The card's drills stand in the order of the session's items.
void mark_new_spell(const ClubPlan& plan, const club::ClubSquad& squad, Date date,
                    const std::vector<std::string>& drill_ids, draw::CardMatter& card);

}  // namespace lanework::cli
