// The slip: who stands with whom and what restricted players do instead. Instructions only: no measure,
// body area or reason comes out. It names players, so it is an answer of its own and never part of a plan.
#pragma once

#include <vector>

#include "core/door/evening_request.h"
#include "core/door/plan_answer.h"
#include "core/people/partners.h"
#include "core/people/swaps.h"

namespace lanework::door {

// A drill in pairs that somebody swaps out of: the rest stand together anew.
struct Regrouped {
  int item;                                  // position in the session
  std::vector<people::PartnerGroup> groups;  // positions in Slip::players
  std::vector<int> alone;
};

struct Slip {
  std::vector<people::Player> players;     // who takes part, in roster order
  people::Partners partners;               // positions in players
  std::vector<people::PlayerSwaps> swaps;  // players with swaps, then those who sit out
  std::vector<Regrouped> regrouped;
};

Result<Slip> answer_slip(const EveningMatter& matter, const PlanAnswer& plan);
Node to_node(const Slip& slip, const EveningMatter& matter, const PlanAnswer& plan);

}  // namespace lanework::door
